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
  // On a phone the work stands first: what only advises is folded.
  if (matchMedia("(width < 46rem)").matches) for (const part of document.querySelectorAll(".fold-thin")) part.open = false;
  for (const button of document.querySelectorAll("[data-print]")) {
    button.hidden = false;
    button.addEventListener("click", () => print());
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
  const onTheWay = new Map();
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
    const sent = fetch(form.dataset.draft, {method: "POST", body: fields, keepalive: leaving, redirect: "error"})
      .then((answer) => answer.ok && told(), () => {})
      .finally(() => onTheWay.get(form) === sent && onTheWay.delete(form));
    onTheWay.set(form, sent);
  };
  document.addEventListener("input", (event) => {
    const form = event.target.form;
    if (!form?.dataset.draft) return;
    clearTimeout(typedIn.get(form));
    typedIn.set(form, setTimeout(keep, 800, form, false));
  });
  const leave = () => [...typedIn.keys()].forEach((form) => (clearTimeout(typedIn.get(form)), keep(form, true)));
  // All drafts have arrived, or the server is too slow to be waited for.
  const arrived = () => Promise.race([Promise.all(onTheWay.values()), new Promise((late) => setTimeout(late, 5000))]);
  addEventListener("pagehide", leave);
  document.addEventListener("visibilitychange", () => document.hidden && leave());
  // What others do on an open sheet appears on it; what is being typed stays under the hands.
  const card = document.querySelector("[data-live]");
  const renew = async (version) => {
    const address = `${location.pathname}?seen=${card.dataset.version}`;
    card.dataset.version = version;
    leave();
    await arrived();
    const answer = await fetch(address, {headers: {Accept: "text/html"}});
    if (!answer.ok) return;
    const page = new DOMParser().parseFromString(await answer.text(), "text/html");
    const step = (of) => of.querySelector(".route [aria-current] h2")?.textContent;
    if (step(page) !== step(document)) {
      document.querySelector("main").replaceWith(page.querySelector("main"));
      return;
    }
    for (const part of [".title", ".gate", "#evidence", "#notice"]) {
      const [old, now] = [document.querySelector(part), page.querySelector(part)];
      if (old && now && !old.contains(document.activeElement)) old.replaceWith(now);
      else if (!old && now) document.querySelector(".card").before(now);
    }
    for (const field of document.querySelectorAll(".card input[name=version]")) field.value = version;
  };
  if (card && window.EventSource) {
    let source = null;
    const watch = () => {
      if (document.hidden) {
        source?.close();
        source = null;
      } else if (!source) {
        source = new EventSource(card.dataset.live);
        source.addEventListener("message", (event) => {
          const {version, others} = JSON.parse(event.data);
          const here = document.getElementById("here");
          if (here) here.textContent = others.length ? `Also here: ${others.join(", ")}` : "";
          if (version > Number(card.dataset.version)) renew(version);
        });
      }
    };
    document.addEventListener("visibilitychange", watch);
    watch();
  }
  const chosen = (input, ...files) => {
    const list = new DataTransfer();
    files.forEach((file) => list.items.add(file));
    input.files = list.files;
    input.disabled = files.length === 0;
  };
  // A large picture is made smaller before it is sent; what the camera and the device noted of the original goes along.
  document.addEventListener("change", async ({target}) => {
    if (!target.matches("input[type=file][data-longest]")) return;
    const [file] = target.files;
    const {deviceTime, scaledFrom, head} = target.form.elements;
    deviceTime.value = file ? new Date(file.lastModified).toISOString() : "";
    scaledFrom.value = "";
    chosen(head);
    if (!/^image\/(jpeg|png)$/.test(file?.type)) return;
    const button = target.form.querySelector("button");
    button.disabled = true;
    try {
      const picture = await createImageBitmap(file);
      const scale = Number(target.dataset.longest) / Math.max(picture.width, picture.height);
      if (scale >= 1) return;
      const canvas = document.createElement("canvas");
      canvas.width = Math.round(picture.width * scale);
      canvas.height = Math.round(picture.height * scale);
      canvas.getContext("2d").drawImage(picture, 0, 0, canvas.width, canvas.height);
      const small = await new Promise((done) => canvas.toBlob(done, file.type, 0.9));
      chosen(target, new File([small], file.name, {type: file.type, lastModified: file.lastModified}));
      chosen(head, new File([file.slice(0, Number(target.dataset.head))], "head"));
      scaledFrom.value = `${picture.width} x ${picture.height}`;
    } catch {
      // what this browser cannot draw is sent as it is
    } finally {
      button.disabled = false;
    }
  });
  // A mark is drawn on its picture from the first place to the second.
  const ground = document.querySelector("[data-marking]");
  if (ground) {
    const fields = document.querySelector("form[action*='/pictures/']").elements;
    document.querySelector("[data-drawn]").hidden = false;
    const box = ground.appendChild(document.createElement("span"));
    box.className = "drawn";
    box.hidden = true;
    let from = null;
    const place = (event) => {
      const {left, top, width, height} = ground.getBoundingClientRect();
      const share = (value, whole) => Math.min(100, Math.max(0, (100 * value) / whole));
      return [share(event.clientX - left, width), share(event.clientY - top, height)];
    };
    const show = (to) => {
      box.hidden = false;
      ["left", "top"].forEach((side, axis) => (box.style[side] = `${Math.min(from[axis], to[axis])}%`));
      ["width", "height"].forEach((side, axis) => (box.style[side] = `${Math.abs(from[axis] - to[axis])}%`));
      [...from, ...to].forEach((value, i) => (fields[`mark.${["fromX", "fromY", "toX", "toY"][i]}`].value = value.toFixed(1)));
    };
    ground.addEventListener("pointerdown", (event) => {
      event.preventDefault();
      ground.setPointerCapture(event.pointerId);
      from = place(event);
      show(from);
    });
    ground.addEventListener("pointermove", (event) => from && show(place(event)));
    for (const end of ["pointerup", "pointercancel"]) ground.addEventListener(end, () => (from = null));
  }
  // A second press while the first is under way would send the form twice. What is typed in another form of the page
  // goes first: the page that comes back shows it as its draft.
  document.addEventListener("submit", async (event) => {
    const {target: form, submitter} = event;
    if (form.dataset.sent) {
      event.preventDefault();
      return;
    }
    form.dataset.sent = "yes";
    clearTimeout(typedIn.get(form));
    typedIn.delete(form);
    leave();
    onTheWay.delete(form);
    if (!onTheWay.size || event.defaultPrevented) return;
    event.preventDefault();
    await arrived();
    onTheWay.clear();
    delete form.dataset.sent;
    form.requestSubmit(submitter?.form === form ? submitter : undefined);
  });
  addEventListener("pageshow", () => document.querySelectorAll("form[data-sent]").forEach((form) => delete form.dataset.sent));
})();
