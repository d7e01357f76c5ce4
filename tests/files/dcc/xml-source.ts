/** A tag-by-tag map of a fixture's text, made without the parser under test, so that a change knows where it stands. */
export type Tag = {
  readonly name: string;
  readonly path: string;
  readonly parent: Tag | null;
  readonly children: Tag[];
  readonly start: number;
  /** After the `>` of its opening tag. */
  readonly opened: number;
  /** At the `<` of its closing tag; equal to `opened` in an empty element. */
  closing: number;
  end: number;
};

type Open = Omit<Tag, "path"> & { path: string };

const local = (name: string): string => name.split(":").at(-1) ?? name;

/** As XPath counts: [n] only where more than one sibling has the name. */
const nameAll = (tag: Open, path: string): void => {
  tag.path = path;
  const totals = new Map<string, number>();
  for (const child of tag.children) totals.set(local(child.name), (totals.get(local(child.name)) ?? 0) + 1);
  const met = new Map<string, number>();
  for (const child of tag.children) {
    const name = local(child.name);
    const index = (met.get(name) ?? 0) + 1;
    met.set(name, index);
    nameAll(child as Open, `${path}/${name}${(totals.get(name) ?? 0) > 1 ? `[${index}]` : ""}`);
  }
};

/** Fixtures hold no CDATA and no `<` in comments. */
export const tagsOf = (text: string): readonly Tag[] => {
  const all: Open[] = [];
  const stack: Open[] = [];
  for (const match of text.matchAll(/<(\/?)([A-Za-z][\w:.-]*)([^<>]*?)(\/?)>/g)) {
    const [whole, closes, name = "", , empty] = match;
    const after = match.index + whole.length;
    if (closes) {
      const tag = stack.pop();
      if (tag?.name !== name) throw new Error(`The fixture closes ${name} where ${tag?.name} is open.`);
      tag.closing = match.index;
      tag.end = after;
      continue;
    }
    const tag: Open = {
      name,
      path: "",
      parent: (stack.at(-1) as Tag | undefined) ?? null,
      children: [],
      start: match.index,
      opened: after,
      closing: after,
      end: after,
    };
    stack.at(-1)?.children.push(tag as Tag);
    all.push(tag);
    if (!empty) stack.push(tag);
  }
  const [root] = all;
  if (root) nameAll(root, `/${local(root.name)}`);
  return all as Tag[];
};

export const isLeaf = (tag: Tag): boolean => tag.children.length === 0 && tag.closing > tag.opened;

export const textIn = (text: string, tag: Tag): string => text.slice(tag.opened, tag.closing);

export const spliced = (text: string, from: number, to: number, by: string): string =>
  text.slice(0, from) + by + text.slice(to);
