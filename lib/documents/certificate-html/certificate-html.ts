import { createHash } from "node:crypto";
import type { CertificateContent } from "@/lib/domain/certificate/content";
import { changesSaid } from "../certificate/changes-said";
import { inLine } from "../certificate/words";
import { all, el, type Html } from "./html";
import { rolls } from "./section-of-rolls";
import { closing, traceability } from "./sections-of-closing";
import { itemsOf, methodAndConditions, particulars } from "./sections-of-item";
import { budgets, changes, functions, lot } from "./sections-of-more";
import { conformity, results } from "./sections-of-results";
import { facts, lines, type Spoken, spoken } from "./speak";
import { style } from "./style";

/** 7.8.2.1 a, b, d: who issued it, what it is, its number. */
const head = (page: Spoken): Html => {
  const { name, addressLines, contact } = page.content.laboratory;
  return el("header", {}, el("strong", {}, name), lines(page, [[addressLines.join(", ")], [contact]]));
};

/** 7.8.8: before anything else is read, which earlier document this one changes, why, and what. */
const amendment = (page: Spoken): Html | null => {
  const { content, words, line } = page;
  const { amends } = content;
  const { caption, sentence } = words;
  return amends
    ? el(
        "div",
        { class: "notice" },
        line(caption(`amends.${amends.kind}`, { number: amends.number })),
        facts(page, [
          [caption("reason"), page.say(sentence(amends.reason))],
          ...changesSaid(content, words).map((said) => [caption("amends.changed"), page.say(said)] as const),
          [caption("contentHash"), el("code", {}, amends.contentHash)],
        ]),
      )
    : null;
};

const title = (page: Spoken): Html => {
  const { content, words, say, line } = page;
  const { caption, sentence } = words;
  const type = content.item.typeLetter;
  const count = itemsOf(content).length;
  return all(
    el("h1", {}, say(sentence(content.title)), " ", content.number),
    line(
      count === 1
        ? caption("thermocoupleType", { type })
        : caption("thermocouplesType", { type, count: String(count) }),
    ),
    lines(page, [
      caption("twin"),
      ...(words.isBilingual ? [caption("languageNote")] : []),
      ...(content.laboratory.demonstration ? [caption("demonstration")] : []),
    ]),
  );
};

const main = (page: Spoken): Html =>
  el(
    "main",
    {},
    title(page),
    amendment(page),
    particulars(page),
    results(page),
    changes(page),
    lot(page),
    rolls(page),
    conformity(page),
    functions(page),
    budgets(page),
    methodAndConditions(page),
    traceability(page),
    closing(page),
  );

/** What became of it since: no part of the content, and left out while it stands. */
const standingNotice = (notice: string): Html | null =>
  notice === "" ? null : el("div", { class: "notice", role: "note", lang: "en" }, el("strong", {}, notice));

/** Its own style and nothing else: no script, picture, font, form or frame. Of the answer's header and of the page. */
export const certificateHtmlPolicy = `default-src 'none'; style-src 'sha256-${createHash("sha256").update(style).digest("base64")}'; base-uri 'none'; form-action 'none'`;

/**
 * The certificate as a page for whoever reads with the ears, the fingers or on a small screen: from the content alone,
 * the same bytes for the same content.
 */
export const certificateHtml = (content: CertificateContent, contentHash: string, notice = ""): string => {
  const page = spoken(content, contentHash);
  const { words } = page;
  return `<!doctype html>\n${
    el(
      "html",
      { lang: words.language },
      el(
        "head",
        {},
        el("meta", { charset: "utf-8" }),
        el("meta", { "http-equiv": "Content-Security-Policy", content: certificateHtmlPolicy }),
        el("meta", { name: "viewport", content: "width=device-width, initial-scale=1" }),
        el("title", {}, `${content.title} ${content.number}`),
        { markup: `<style>${style}</style>` },
      ),
      el(
        "body",
        {},
        head(page),
        standingNotice(notice),
        main(page),
        el("footer", {}, el("p", {}, inLine(words.caption("endOf", { number: content.number })))),
      ),
    ).markup
  }\n`;
};
