import { holders, leaves, type Mutation, neutral } from "./mutant";
import { spliced, tagsOf, textIn } from "./xml-source";

export const neutralMutations: Readonly<Record<string, Mutation>> = {
  "attributes in another order": (text, draw) => {
    const tag = draw.of(
      tagsOf(text).filter(
        ({ start, opened }) => (text.slice(start, opened).match(/[\w:]+="[^"]*"/g) ?? []).length > 1,
      ),
    );
    const attributes = text.slice(tag.start, tag.opened).match(/[\w:]+="[^"]*"/g) ?? [];
    const order = attributes
      .map((attribute) => ({ attribute, at: draw.below(1000) }))
      .sort((one, other) => one.at - other.at)
      .map(({ attribute }) => attribute);
    return neutral(spliced(text, tag.start, tag.opened, `<${tag.name} ${order.join(" ")}>`), tag.path);
  },
  "white space between elements": (text, draw) => {
    const tag = draw.of(holders(text));
    return neutral(spliced(text, tag.opened, tag.opened, draw.of([" ", "\n\n", "\t", "\r\n  "])), tag.path);
  },
  "other prefixes": (text, draw) => {
    const prefix = `p${draw.below(1000)}`;
    const found = /xmlns:(\w+)="https:\/\/ptb\.de\/(?:dcc|si)"/.exec(text)?.[1] ?? "none";
    return neutral(
      text
        .replaceAll(`<${found}:`, `<${prefix}:`)
        .replaceAll(`</${found}:`, `</${prefix}:`)
        .replace(`xmlns:${found}=`, `xmlns:${prefix}=`),
      `${found} to ${prefix}`,
    );
  },
  "comments and instructions": (text, draw) => {
    const tag = draw.of(draw.below(2) === 0 ? holders(text) : leaves(text, /^content$/));
    return neutral(
      spliced(
        text,
        tag.opened,
        tag.opened,
        draw.of(["<!-- seen -->", "<?seen by?>", "<!-- <!DOCTYPE x> -->"]),
      ),
      tag.path,
    );
  },
  "words in CDATA": (text, draw) => {
    const tag = draw.of(leaves(text).filter((leaf) => !/&/.test(textIn(text, leaf))));
    return neutral(spliced(text, tag.opened, tag.closing, `<![CDATA[${textIn(text, tag)}]]>`), tag.path);
  },
  "characters by number": (text, draw) => {
    const tag = draw.of(leaves(text));
    const at = tag.opened + draw.below(tag.closing - tag.opened);
    const code = text.codePointAt(at) ?? 0;
    return neutral(
      spliced(text, at, at + 1, draw.below(2) === 0 ? `&#${code};` : `&#x${code.toString(16)};`),
      tag.path,
    );
  },
  "single quotes, or UTF-16": (text, draw) => {
    if (draw.below(2) === 0)
      return {
        expect: "neutral",
        bytes: Buffer.from(`\uFEFF${text.replace('encoding="UTF-8"', 'encoding="UTF-16"')}`, "utf16le"),
        what: "UTF-16",
      };
    const tag = draw.of(tagsOf(text).filter(({ start, opened }) => text.slice(start, opened).includes('"')));
    return neutral(
      spliced(text, tag.start, tag.opened, text.slice(tag.start, tag.opened).replaceAll('"', "'")),
      tag.path,
    );
  },
};
