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
  // A second press while the first is under way would send the form twice.
  document.addEventListener("submit", (event) => {
    if (event.target.dataset.sent) event.preventDefault();
    event.target.dataset.sent = "yes";
  });
  addEventListener("pageshow", () => document.querySelectorAll("form[data-sent]").forEach((form) => delete form.dataset.sent));
})();
