"use strict";

// The screen stays on while the bench is seen, where the browser can do that.

let lock = null;

/** Keep the screen on; gives whether it is kept. */
export async function stayAwake() {
  if (!("wakeLock" in navigator) || document.visibilityState !== "visible") return false;
  if (lock && !lock.released) return true;
  try {
    lock = await navigator.wakeLock.request("screen");
    return true;
  } catch {
    return false;
  }
}
