"use strict";

// What is told at the bench: kept on this device first, then sent until the workbench has it.

const STORE = "entries";

function opened() {
  return new Promise((resolve, reject) => {
    const asked = indexedDB.open("entremetry-bench", 1);
    asked.onupgradeneeded = () => asked.result.createObjectStore(STORE, { keyPath: "key" });
    asked.onsuccess = () => resolve(asked.result);
    asked.onerror = () => reject(asked.error);
  });
}

async function within(mode, work) {
  const base = await opened();
  try {
    return await new Promise((resolve, reject) => {
      const unit = base.transaction(STORE, mode, { durability: "strict" });
      const asked = work(unit.objectStore(STORE));
      unit.oncomplete = () => resolve(asked.result);
      unit.onabort = unit.onerror = () => reject(unit.error);
    });
  } finally {
    base.close();
  }
}

/** Entries of a plan that the workbench does not have yet, in the order of their times. */
export async function waiting(plan) {
  const all = await within("readonly", (store) => store.getAll());
  return all.filter((entry) => entry.plan === plan).sort((a, b) => a.at.localeCompare(b.at));
}

export function keep(entry) {
  return within("readwrite", (store) => store.put(entry));
}

export function forget(key) {
  return within("readwrite", (store) => store.delete(key));
}

/** Send one entry. Gives "sent", "unreachable", or the status of a refusal. */
export async function send(address, token, entry) {
  const form = new URLSearchParams({ token });
  for (const name of ["key", "what", "task", "minutes", "at"]) form.set(name, entry[name]);
  let answer;
  try {
    answer = await fetch(address, { method: "POST", body: form });
  } catch {
    return "unreachable";
  }
  if (answer.ok) return "sent";
  return answer.status >= 500 ? "unreachable" : String(answer.status);
}

/** The plan as the workbench has it or had it, and whether that is now; null if it never came. */
export async function fetched(address) {
  try {
    const answer = await fetch(address);
    if (!answer.ok) return null;
    return { plan: await answer.json(), fresh: !answer.headers.has("X-Kept") };
  } catch {
    return null;
  }
}

export function newKey() {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return [...bytes].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}
