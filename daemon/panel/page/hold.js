// What undoes a trip is held for a second, by finger or by key: a slip does nothing. Without script
// a page asks once more instead.
"use strict";
(() => {
  const holdFor = 1000;
  document.documentElement.classList.add("scripted");
  let timer = 0;
  let held = null;

  function end() {
    clearTimeout(timer);
    if (held) held.classList.remove("held");
    held = null;
  }

  function begin(button) {
    end();
    held = button;
    held.classList.add("held");
    timer = setTimeout(() => {
      end();
      if (button.isConnected) carryOut(button.form);
    }, holdFor);
  }

  // As by any other way: what is asked for is armed first, then confirmed with the token that came.
  async function carryOut(form) {
    if (form.dataset.then !== "confirm") return form.submit();
    const body = new URLSearchParams(new FormData(form));
    const answer = await fetch(form.action, { method: "POST", body }).catch(() => null);
    if (!answer) return location.reload();
    const page = new DOMParser().parseFromString(await answer.text(), "text/html");
    const confirm = page.querySelector("form.confirm");
    if (!confirm) return location.assign(answer.url); // it says why
    confirm.hidden = true;
    document.body.append(document.adoptNode(confirm));
    confirm.submit();
  }

  const button = (event) => event.target.closest && event.target.closest("button[data-hold]");
  document.addEventListener("pointerdown", (event) => {
    if (button(event) && event.isPrimary && event.button === 0) begin(button(event));
  });
  for (const kind of ["pointerup", "pointercancel", "pointerout"]) document.addEventListener(kind, end);
  addEventListener("blur", end, true);
  const isKey = (event) => button(event) && (event.key === "Enter" || event.key === " ");
  document.addEventListener("keydown", (event) => {
    if (!isKey(event)) return;
    event.preventDefault();
    if (!event.repeat) begin(button(event));
  });
  document.addEventListener("keyup", (event) => {
    if (isKey(event)) event.preventDefault();
    end();
  });
  document.addEventListener("contextmenu", (event) => {
    if (button(event)) event.preventDefault(); // a finger that rests
  });
  // A finger's or a mouse's. Who has neither (a screen reader presses by itself) is asked once more.
  document.addEventListener("click", (event) => {
    if (button(event) && event.detail > 0) event.preventDefault();
  });
})();
