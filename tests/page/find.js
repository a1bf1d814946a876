// Finds the thing of a role by its words, as a person or a screen reader would.
// arguments: role, words. Returns the element or null.
const [role, words] = arguments;
const flat = (text) => (text ?? "").replace(/\s+/g, " ").trim();
const wanted = flat(words);

const TEXTS = "input:not([type]), input[type=text], input[type=number], input[type=search]," +
  " input[type=email], input[type=url], input[type=tel], textarea";
const NATIVE = {
  button: "button, summary, input[type=button], input[type=submit]",
  link: "a[href]",
  textbox: TEXTS,
  checkbox: "input[type=checkbox]",
  radio: "input[type=radio]",
  combobox: "select",
  slider: "input[type=range]",
  heading: "h1, h2, h3, h4, h5, h6",
  img: "img, svg",
  dialog: "dialog",
  list: "ul, ol",
  navigation: "nav",
  table: "table",
};
const of = (...roles) =>
  roles.flatMap((r) => [NATIVE[r], `[role=${r}]`]).filter(Boolean).join(", ");
const selector =
  role === "" ? of("button", "link", "tab", "checkbox", "radio", "switch", "menuitem", "option")
  : role === "field" ? of("textbox", "checkbox", "radio", "combobox", "slider", "spinbutton")
  : of(role);

function name(el) {
  const by = el.getAttribute("aria-labelledby");
  if (by) return flat(by.split(/\s+/).map((id) => document.getElementById(id)?.textContent).join(" "));
  const label = el.getAttribute("aria-label");
  if (label) return flat(label);
  if (el.labels?.length) {
    return flat([...el.labels].map((l) => {
      // A label around its field: the words without the field's own entries.
      const copy = l.cloneNode(true);
      copy.querySelectorAll("select, textarea, datalist").forEach((inner) => inner.remove());
      return copy.textContent;
    }).join(" "));
  }
  if (el instanceof SVGElement) return flat(el.querySelector("title")?.textContent);
  if (el.matches("input[type=button], input[type=submit]")) return flat(el.value);
  return flat(el.alt || el.innerText || el.textContent || el.title || el.placeholder);
}

// A tick box may be drawn by its label alone.
const seen = (el) => el.checkVisibility({ visibilityProperty: true }) ||
  [...(el.labels ?? [])].some((l) => l.checkVisibility({ visibilityProperty: true }));
const all = [...document.querySelectorAll(selector)].filter((el) => seen(el) && !el.closest("[inert]"));
return all.find((el) => name(el) === wanted) ?? all.find((el) => name(el).includes(wanted)) ?? null;
