// Buttons that copy a text or a whole e-mail; they stay hidden where a browser cannot do it.
"use strict";

const words = document.querySelector("[data-copied]").dataset;

// A person hears and sees what came of it, beside the button.
function tell(button, text) {
  let told = button.nextElementSibling;
  if (!told) {
    told = document.createElement("span");
    told.setAttribute("role", "status");
    button.after(told);
  }
  told.textContent = "";
  setTimeout(() => { told.textContent = text; }, 50);
}

async function fetched(address, type) {
  const answer = await fetch(address);
  if (!answer.ok) throw new Error(answer.status);
  return new Blob([await answer.text()], { type });
}

// The e-mail goes into the clipboard as HTML and as text; the program it is pasted into takes what it can.
function email(button) {
  return navigator.clipboard.write([new ClipboardItem({
    "text/html": fetched(button.dataset.copyPage, "text/html"),
    "text/plain": fetched(button.dataset.copyText, "text/plain"),
  })]);
}

function offer(selector, copy) {
  for (const button of document.querySelectorAll(selector)) {
    button.hidden = false;
    button.addEventListener("click", async () => {
      try {
        await copy(button);
        tell(button, words.copied);
      } catch {
        tell(button, words.notCopied);
      }
    });
  }
}

if (navigator.clipboard) {
  offer("[data-copy]", (button) =>
    navigator.clipboard.writeText(document.getElementById(button.dataset.copy).textContent));
  if (window.ClipboardItem && navigator.clipboard.write) offer("[data-copy-page]", email);
}
