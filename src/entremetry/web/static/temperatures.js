"use strict";

// The section moves through time: one frame is shown, the slider and two buttons choose it.
function show(film, wanted) {
  const slider = film.querySelector("input[type=range]");
  const frames = [...film.querySelectorAll(".frame")];
  const index = Math.min(frames.length - 1, Math.max(0, wanted));
  frames.forEach((frame, k) => frame.classList.toggle("now", k === index));
  slider.value = index;
  slider.setAttribute("aria-valuetext", frames[index].dataset.said);
  film.querySelector('[data-film-step="-1"]').disabled = index === 0;
  film.querySelector('[data-film-step="1"]').disabled = index === frames.length - 1;
}

function begin() {
  for (const film of document.querySelectorAll("[data-film]:not(.moving)")) {
    film.classList.add("moving");
    film.querySelector(".film-controls").hidden = false;
    show(film, Number(film.querySelector("input[type=range]").value));
  }
}

document.addEventListener("input", (event) => {
  const film = event.target.matches("input[type=range]") && event.target.closest("[data-film]");
  if (film) show(film, Number(event.target.value));
});

document.addEventListener("click", (event) => {
  const button = event.target.closest("[data-film-step]");
  if (!button) return;
  const film = button.closest("[data-film]");
  const slider = film.querySelector("input[type=range]");
  show(film, Number(slider.value) + Number(button.dataset.filmStep));
  if (button.disabled) slider.focus();
});

document.addEventListener("htmx:afterSettle", begin);
begin();
