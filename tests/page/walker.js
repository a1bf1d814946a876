// Uses the page as a person with no plan would: some steps, drawn by seeded dice.
// arguments: the seed, the number of this go, how many steps, done.
// Gives back what was done, and what was wrong: the program stopped, or something odd is to be read.
const [seed, go, count, done] = arguments;

// A small generator of good quality (mulberry32): the same steps for the same numbers.
let state = (Math.imul(seed + 1, 0x9e3779b1) ^ Math.imul(go + 1, 0x85ebca6b)) >>> 0;
function dice() {
  state = (state + 0x6d2b79f5) >>> 0;
  let t = Math.imul(state ^ (state >>> 15), 1 | state);
  t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
  return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
}
const below = (n) => Math.floor(dice() * n);
const one = (list) => list[below(list.length)];
const now_and_then = (n) => below(n) === 0;

const WHOLE = ["4", "3", "2 1/2", "3 3/4", "5/8", "60 mm", "7.5 cm", "2.5 in", "90", "1", "12", "0.3", "210 mm", "6\""];
const HALF = ["4 1/", "3.", "1/", "-", "4 i", "12 m", "2 ½ /", "."];
const WRONG = ["x", "-3", "0", "99999", "1e9", "4 1/0", "½½", "", " ", "٣", "<b>no</b>", "💐💐", "9".repeat(40), "two"];
const NAMES = ["Tea", "Für Zoë", "a".repeat(90), "礼物 💐", "  ", "<i>x</i>", "Łukasz’ Box", "1/2"];
const text = () => one(now_and_then(3) ? HALF : now_and_then(3) ? WRONG : now_and_then(5) ? NAMES : WHOLE);

const flat = (words) => (words ?? "").replace(/\s+/g, " ").trim();
const usable = (el) =>
  !el.disabled && !el.closest("[inert]") && el.checkVisibility({ visibilityProperty: true });
const all = (selector) => [...document.querySelectorAll(selector)].filter(usable);
const name = (el) => el === document.body ? "nothing" :
  flat(el.getAttribute("aria-label") || [...(el.labels ?? [])].map((l) => l.textContent).join(" ") || el.textContent)
    .slice(0, 60);
const FIELDS = "input[type=text]:not([readonly]), input[type=search], input:not([type]), textarea";

// What would leave the page, or end the walk; and what makes a set too large to walk through quickly.
const NEVER = /^(Load the page again|Save this design as a file|Use it now|Use the newer version)/;
const MORE = /^(Add a box|Duplicate|Add a card|Add another sheet size|Start a new set|Open the worked example|Open )/;
const FILES = /^(Save|Print)/;

function buttons() {
  const many = all("article").length > 11 || all("li").filter((li) => /Rename/.test(li.textContent)).length > 6;
  return all("button, summary").filter((el) => {
    const words = flat(el.textContent);
    if (NEVER.test(words) || (FILES.test(words) && !now_and_then(8))) return false;
    return !(many && MORE.test(words));
  });
}

// Said before it is done: where the page hangs, the browser's own log has it.
function say(words) {
  console.debug(`walker: ${words}`);
  return words;
}

function press(words) {
  const found = all("button").filter((el) => flat(el.textContent).startsWith(words));
  if (!found.length) return null;
  const said = say(`press “${words}”`);
  one(found).click();
  return said;
}

function put(el, words) {
  // As the browser's own typing does: it goes where the focus is, and tells the page itself.
  el.focus();
  el.select?.();
  const typed = words === "" ? document.execCommand("delete") : document.execCommand("insertText", false, words);
  if (!typed && words !== "") {
    el.value = words;
    el.dispatchEvent(new InputEvent("input", { bubbles: true }));
  }
}

async function type(letter_by_letter) {
  const fields = all(FIELDS);
  if (!fields.length) return null;
  const el = one(fields);
  const words = text();
  const said = say(`type “${words.slice(0, 40)}” into “${name(el)}”`);
  if (letter_by_letter && words.length < 12) {
    el.focus();
    el.select?.();
    for (const letter of words) {
      document.execCommand("insertText", false, letter);
      if (now_and_then(2)) await pause(1);
      if (document.activeElement !== el) break;
    }
  } else {
    put(el, words);
  }
  return said;
}

function key(letter, shift) {
  const at = document.activeElement ?? document.body;
  const said = say(`Ctrl+${shift ? "Shift+" : ""}${letter} in “${name(at)}”`);
  at.dispatchEvent(
    new KeyboardEvent("keydown", { key: letter, ctrlKey: true, shiftKey: shift, bubbles: true, cancelable: true }),
  );
  return said;
}

function choose() {
  const lists = all("select");
  if (!lists.length) return null;
  const list = one(lists);
  list.focus();
  const entry = one([...list.options]);
  const said = say(`choose “${flat(entry.text)}” of “${name(list)}”`);
  list.value = entry.value;
  list.dispatchEvent(new Event("input", { bubbles: true }));
  list.dispatchEvent(new Event("change", { bubbles: true }));
  return said;
}

function slide() {
  const sliders = all("input[type=range], input[type=color]");
  if (!sliders.length) return null;
  const el = one(sliders);
  const [least, most] = [Number(el.min || 0), Number(el.max || 100)];
  el.focus();
  const said = say(`move “${name(el)}”`);
  el.value = el.type === "color" ? `#${below(0xffffff).toString(16).padStart(6, "0")}` : least + dice() * (most - least);
  el.dispatchEvent(new InputEvent("input", { bubbles: true }));
  el.dispatchEvent(new Event("change", { bubbles: true }));
  return `${said} to ${el.value}`;
}

function touch() {
  const marks = all("main svg [data-panel], main svg path, main svg polygon");
  if (!marks.length) return null;
  const said = say("touch a drawing");
  one(marks).dispatchEvent(new MouseEvent("click", { bubbles: true, cancelable: true }));
  return said;
}

function leave() {
  const at = document.activeElement;
  const said = say(`leave “${at ? name(at) : ""}”`);
  at?.blur?.();
  return said;
}

function focus() {
  const fields = all(`${FIELDS}, select, button`);
  if (!fields.length) return null;
  const el = one(fields);
  const said = say(`focus “${name(el)}”`);
  el.focus();
  return said;
}

const WALK = ["The set", "Flat & folded", "Sheets", "Steps", "Teach & sell", "Saved & shared"];

async function step() {
  const roll = below(100);
  if (roll < 22) return type(false);
  if (roll < 30) return type(true);
  if (roll < 40) return key("z", false);
  if (roll < 45) return key(one(["z", "y"]), true);
  if (roll < 49) return press("Undo");
  if (roll < 52) return press("Redo");
  if (roll < 55) return press(one(["Add a box", "Duplicate", "Remove", "Add a card", "Add a holder"]));
  if (roll < 60) return press(now_and_then(2) ? "The set" : one(WALK));
  if (roll < 66) return choose();
  if (roll < 69) return slide();
  if (roll < 71) return touch();
  if (roll < 74) return leave();
  if (roll < 78) return focus();
  if (roll < 83) {
    const ticks = all("input[type=checkbox], input[type=radio]");
    if (!ticks.length) return null;
    const el = one(ticks);
    const said = say(`tick “${name(el)}”`);
    el.focus();
    el.click();
    return said;
  }
  const found = buttons();
  if (!found.length) return null;
  const el = one(found);
  const said = say(`press “${name(el)}”`);
  el.focus();
  el.click();
  return said;
}

const pause = (ms) => new Promise((then) => setTimeout(then, ms));
const frame = () => new Promise((then) => requestAnimationFrame(() => setTimeout(then, 0)));

// Most hands are slower than a frame, some are not: what follows later must be met at every moment.
async function wait() {
  const roll = below(40);
  if (roll < 8) return;
  if (roll < 14) return null;
  if (roll < 34) return frame();
  if (roll < 38) return pause(30 + below(100));
  return pause(150 + below(450));
}

const stopped = () => !document.getElementById("trouble")?.hidden;
const ODD = /\bNaN\b|\bundefined\b|\b[Ii]nf(?:inity)?\b|∞|\[object |\bnull\b/;

function odd() {
  const fields = all("input, textarea").map((el) => `${el.value} ${el.placeholder ?? ""}`).join(" ");
  const read = `${document.body.innerText} ${fields}`;
  const found = ODD.exec(read);
  return found && read.slice(Math.max(0, found.index - 60), found.index + 60);
}

(async () => {
  window.print = () => {};
  const log = [];
  let wrong = null;
  // A large design may take its time at each key: then this go is shorter.
  const end = performance.now() + 20_000;
  for (let n = 0; n < count && !wrong && performance.now() < end; n += 1) {
    try {
      // Where there is nothing of a kind, another is tried.
      let told = null;
      for (let tries = 0; told === null && tries < 9; tries += 1) told = await step();
      log.push(told ?? "nothing");
      await wait();
      if (stopped()) wrong = "the page has stopped";
      else if (n % 10 === 9) wrong = odd();
    } catch (error) {
      wrong = `a script threw: ${error}`;
    }
  }
  await frame();
  await frame();
  if (!wrong) wrong = stopped() ? "the page has stopped" : odd();
  done([log, wrong]);
})();
