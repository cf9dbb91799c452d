// Single keys that lead somewhere, where nothing is being typed. They can be switched off on the page of keys, in this browser.
(() => {
  const OFF = "benchtrail-keys-off";
  const stored = () => {
    try {
      return localStorage.getItem(OFF) === "yes";
    } catch {
      return false;
    }
  };
  const store = (off) => {
    try {
      off ? localStorage.setItem(OFF, "yes") : localStorage.removeItem(OFF);
    } catch {
      // a browser that keeps nothing has them on with the next page
    }
  };
  let off = stored();
  const switching = document.getElementById("keys-switch");
  if (switching) {
    const words = switching.appendChild(document.createElement("span"));
    const button = document.createElement("button");
    const show = () => {
      words.textContent = off ? "Single keys are off. " : "Single keys are on. ";
      button.textContent = off ? "Switch them on" : "Switch them off";
    };
    switching.replaceChildren(words, button);
    button.type = "button";
    button.className = "second";
    button.addEventListener("click", () => {
      off = !off;
      store(off);
      show();
    });
    show();
  }
  const inPage = {o: "#step", e: "#evidence", m: "#move"};
  const show = (part) => {
    if (!part.hasAttribute("tabindex")) part.setAttribute("tabindex", "-1");
    part.focus();
    part.scrollIntoView();
  };
  document.addEventListener("keydown", (event) => {
    if (off || event.defaultPrevented || event.ctrlKey || event.altKey || event.metaKey || event.isComposing || event.repeat) return;
    if (event.target.closest("input, select, textarea, [contenteditable]")) return;
    const link = document.querySelector(`[data-key="${CSS.escape(event.key)}"]`);
    const part = inPage[event.key] && document.querySelector(inPage[event.key]);
    if (!link && !part) return;
    event.preventDefault();
    if (link) link.click();
    else show(part);
  });
})();
