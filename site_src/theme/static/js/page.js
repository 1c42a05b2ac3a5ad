// Says when what stands here no longer counts, and keeps the last course status for reading without a connection.
"use strict";

(function (script) {
  const page = document.documentElement;
  const root = new URL("../../", script.src);

  // "26 hours ago" in the page's language; nothing where the browser does not speak it or its clock is behind.
  function ago(moment) {
    const Format = window.Intl && Intl.RelativeTimeFormat;
    if (!Format || !Format.supportedLocalesOf(page.lang).length) return "";
    const hours = Math.floor((Date.now() - Date.parse(moment)) / 36e5);
    if (hours < 0) return "";
    const words = new Format(page.lang);
    return hours < 48 ? words.format(-hours, "hour") : words.format(-Math.floor(hours / 24), "day");
  }

  function check() {
    for (const one of document.querySelectorAll("[data-until]")) {
      if (Date.now() < Date.parse(one.dataset.until)) continue;
      const instead = one.querySelector(":scope > template");
      one.removeAttribute("data-until");
      one.textContent = "";
      if (instead) one.appendChild(instead.content);
    }
    for (const one of document.querySelectorAll("[data-since]")) {
      const words = ago(one.dataset.since);
      if (!words) continue;
      one.querySelector("[data-age]").textContent = words;
      one.firstElementChild.hidden = false;
      one.lastElementChild.hidden = true;
    }
  }
  check();
  setInterval(check, 60000);
  document.addEventListener("visibilitychange", check);

  // A link to a part that is folded opens it.
  function unfold() {
    const part = document.getElementById(location.hash.slice(1));
    const folded = part && part.querySelector(":scope > details");
    if (folded) folded.open = true;
  }
  unfold();
  addEventListener("hashchange", unfold);

  const bar = document.querySelector("[data-offline-bar]");
  if (bar && "offline" in page.dataset) bar.hidden = false;

  // Not from a folder, and not without the means.
  if (!/^https?:$/.test(location.protocol) || !navigator.serviceWorker || !window.caches) return;
  const choice = "swardcast keep " + root.pathname;
  let keeps = true;
  try {
    keeps = localStorage.getItem(choice) !== "off";
  } catch {
    keeps = false; // who allows no storage is not given one
  }

  async function obey() {
    if (keeps) return navigator.serviceWorker.register(new URL("offline.js", root));
    const worker = await navigator.serviceWorker.getRegistration(root);
    if (worker) await worker.unregister();
    for (const name of await caches.keys()) {
      if (name.startsWith("swardcast " + root.href + " ")) await caches.delete(name);
    }
  }
  obey().catch(() => {});

  const part = document.querySelector("[data-keep]");
  if (!part) return;
  function show() {
    for (const one of part.querySelectorAll("[data-when]")) one.hidden = (one.dataset.when === "on") !== keeps;
    part.hidden = false;
  }
  part.querySelector("button").addEventListener("click", () => {
    keeps = !keeps;
    try {
      localStorage.setItem(choice, keeps ? "on" : "off");
    } catch {
      keeps = false;
    }
    obey().catch(() => {}).then(show);
  });
  show();
})(document.currentScript);
