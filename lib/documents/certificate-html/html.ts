/** Markup that is safe to put into a page: made here alone, so that no text gets in unescaped. */
export type Html = { readonly markup: string };

export type Attributes = Readonly<Record<string, string | number | undefined>>;
type Child = Html | string | null | readonly Child[];

const entities: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

export const escaped = (text: string): string => text.replace(/[&<>"']/g, (sign) => entities[sign] as string);

const written = (child: Child): string => {
  if (child === null) return "";
  if (typeof child === "string") return escaped(child);
  return "markup" in child ? child.markup : child.map(written).join("");
};

const isVoid = new Set(["meta", "br", "hr", "link"]);

/** One element; attributes left undefined are left out. Names of elements and attributes are ours, never data. */
export const el = (name: string, attributes: Attributes, ...children: readonly Child[]): Html => {
  const set = Object.entries(attributes)
    .flatMap(([key, value]) => (value === undefined ? [] : [` ${key}="${escaped(String(value))}"`]))
    .join("");
  return {
    markup: isVoid.has(name)
      ? `<${name}${set}>`
      : `<${name}${set}>${children.map(written).join("")}</${name}>`,
  };
};

export const all = (...children: readonly Child[]): Html => ({ markup: children.map(written).join("") });
