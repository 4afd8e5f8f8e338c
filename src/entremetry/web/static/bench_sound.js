"use strict";

// Three notes when a wait is over, made on the spot. A browser lets a page sound only after a touch.

const NOTES = [659.26, 783.99, 1046.5]; // Hz
let audio = null;

export function isOn() {
  return audio !== null && audio.state === "running";
}

export async function turnOn() {
  const Audio = window.AudioContext || window.webkitAudioContext;
  if (!Audio) return false;
  audio = audio || new Audio();
  await audio.resume();
  chime();
  return isOn();
}

export async function turnOff() {
  await audio?.suspend();
}

export function chime() {
  if (!isOn()) return;
  NOTES.forEach((note, place) => ring(note, audio.currentTime + place * 0.28));
}

function ring(note, start) {
  const tone = audio.createOscillator();
  const loudness = audio.createGain();
  tone.frequency.value = note;
  tone.type = "triangle";
  loudness.gain.setValueAtTime(0.0001, start);
  loudness.gain.exponentialRampToValueAtTime(0.6, start + 0.03);
  loudness.gain.exponentialRampToValueAtTime(0.0001, start + 0.75);
  tone.connect(loudness).connect(audio.destination);
  tone.start(start);
  tone.stop(start + 0.8);
}
