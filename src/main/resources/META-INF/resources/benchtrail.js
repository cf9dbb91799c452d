// Makes the forms quicker where there is JavaScript; everything works without it.
(() => {
  // One tap for a row of questions that mostly have the same answer; each can still be changed.
  for (const grid of document.querySelectorAll(".grid[data-all]")) {
    const button = document.createElement("button");
    button.type = "button";
    button.className = "plain";
    button.textContent = grid.dataset.allWords;
    button.addEventListener("click", () => {
      for (const radio of grid.querySelectorAll(`input[type=radio][value="${grid.dataset.all}"]`)) radio.checked = true;
    });
    grid.before(button);
  }
  // What blocks the way is read first.
  document.getElementById("notice")?.focus();
  // A link to a field inside a folded part unfolds it.
  const unfold = () => {
    const target = location.hash.length > 1 && document.getElementById(decodeURIComponent(location.hash.slice(1)));
    for (let part = target; part; part = part.parentElement) if (part.tagName === "DETAILS") part.open = true;
    if (target) target.scrollIntoView();
  };
  addEventListener("hashchange", unfold);
  unfold();
  // What is typed on a job sheet is kept on the server while it is typed.
  const typedIn = new Map();
  const told = () => {
    const bar = document.querySelector("form[data-draft] .acts.sticky");
    if (!bar) return;
    const words = bar.querySelector("output") || bar.appendChild(document.createElement("output"));
    words.className = "pencil";
    words.textContent = `Draft kept ${new Date().toLocaleTimeString("en-GB", {hour: "2-digit", minute: "2-digit"})}`;
  };
  const keep = (form, leaving) => {
    typedIn.delete(form);
    const fields = new URLSearchParams(new FormData(form));
    fetch(form.dataset.draft, {method: "POST", body: fields, keepalive: leaving, redirect: "error"}).then((answer) => answer.ok && told(), () => {});
  };
  document.addEventListener("input", (event) => {
    const form = event.target.form;
    if (!form?.dataset.draft) return;
    clearTimeout(typedIn.get(form));
    typedIn.set(form, setTimeout(keep, 800, form, false));
  });
  const leave = () => [...typedIn.keys()].forEach((form) => (clearTimeout(typedIn.get(form)), keep(form, true)));
  addEventListener("pagehide", leave);
  document.addEventListener("visibilitychange", () => document.hidden && leave());
  // A second press while the first is under way would send the form twice.
  document.addEventListener("submit", (event) => {
    if (event.target.dataset.sent) event.preventDefault();
    event.target.dataset.sent = "yes";
    clearTimeout(typedIn.get(event.target));
    typedIn.delete(event.target);
  });
  addEventListener("pageshow", () => document.querySelectorAll("form[data-sent]").forEach((form) => delete form.dataset.sent));
})();
