import type { CertificateContent } from "@/lib/domain/certificate/content";
import { type Said, type Words, wordsOf } from "../certificate/words";
import { all, el, type Html } from "./html";

/** What every part of the page is written from. */
export type Spoken = {
  readonly content: CertificateContent;
  readonly contentHash: string;
  readonly words: Words;
  /** The text in each language, the further ones marked with theirs (WCAG 2.2, 3.1.2). */
  readonly say: (said: Said) => Html;
  /** The same, each language a line of its own. */
  readonly line: (said: Said) => Html;
};

export const spoken = (content: CertificateContent, contentHash: string): Spoken => {
  const words = wordsOf(content);
  const languages = content.catalogue?.languages ?? ["en"];
  /** What is the same in each language stands once, and then has none of its own. */
  const each = (said: Said, element: "span" | "p", glue: string): Html => {
    const [leading, ...further] = said;
    const own = element === "p" ? el("p", {}, leading) : all(leading);
    return all(
      own,
      further.map((text, at) => all(glue, el(element, { lang: languages[at + 1], class: "further" }, text))),
    );
  };
  return {
    content,
    contentHash,
    words,
    say: (said) => each(said, "span", " "),
    line: (said) => each(said, "p", ""),
  };
};

export const lines = ({ line }: Spoken, texts: readonly Said[]): Html => all(texts.map(line));

type Part = { readonly caption: Said; readonly level?: 2 | 3; readonly id?: string };

/** A headed part of the document. */
export const part = ({ say }: Spoken, { caption, level = 2, id }: Part, ...body: readonly Html[]): Html =>
  el("section", {}, el(`h${level}`, { id }, say(caption)), all(...body));

/** Terms with what they are; empty ones are left out. */
export const facts = ({ say }: Spoken, of: readonly (readonly [Said, Html | null])[]): Html =>
  el(
    "dl",
    {},
    of.flatMap(([term, what]) =>
      what === null ? [] : [el("div", {}, el("dt", {}, say(term)), el("dd", {}, what))],
    ),
  );
