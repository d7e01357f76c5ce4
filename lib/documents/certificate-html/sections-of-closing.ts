import type { CertificateContent, CertificateStandard } from "@/lib/domain/certificate/content";
import { type Said, together } from "../certificate/words";
import { all, el, type Html } from "./html";
import { facts, lines, part, type Spoken } from "./speak";
import { table } from "./table";

const isRoute = (route: string): route is "nmi" | "accredited" | "in-house" | "other" =>
  ["nmi", "accredited", "in-house", "other"].includes(route);

const calibrationOf = ({ words, say, line }: Spoken, standard: CertificateStandard): Html => {
  const { caption } = words;
  const { calibrationCertificate, performedOn, dueOn, issuer, accreditation, route } = standard;
  if (calibrationCertificate === "") return say(caption("ownCertificateNone"));
  const from: Said = isRoute(route) ? caption(`route.${route}`) : [route];
  return all(
    line(
      together(
        ", ",
        [calibrationCertificate],
        [performedOn],
        ...(dueOn ? [together(" ", caption("due"), [dueOn])] : []),
      ),
    ),
    line(together(" · ", ...[issuer, accreditation].filter(Boolean).map((one): Said => [one]), from)),
    standard.documentSha256 ? el("code", {}, `SHA-256 ${standard.documentSha256}`) : null,
  );
};

/** 7.8.4.1 c: how the results are metrologically traceable, standard by standard. */
export const traceability = (page: Spoken): Html => {
  const { content, words, say, line } = page;
  const { caption, sentence } = words;
  return part(
    page,
    { caption: caption("traceability") },
    lines(page, [sentence(content.traceabilityStatement)]),
    table(page, {
      caption: say(caption("traceability")),
      columns: [
        {
          header: caption("standard"),
          cell: ({ role, description, isExternal }) =>
            all(
              line(caption(`role.${role}`)),
              line(sentence(description)),
              isExternal ? line(caption("external")) : null,
            ),
        },
        {
          header: caption("standardIdentity"),
          cell: ({ tag, serial }) =>
            all(el("p", {}, tag), line(together(" ", caption("serialShort"), [serial]))),
        },
        { header: caption("standsOn"), cell: (standard) => calibrationOf(page, standard) },
      ],
      rows: content.standards,
    }),
  );
};

const sentences = (page: Spoken, caption: Said, of: readonly string[] | undefined): Html | null =>
  of && of.length > 0 ? part(page, { caption }, lines(page, of.map(page.words.sentence))) : null;

const accreditation = (page: Spoken): Html | null => {
  const { accreditation: said, accreditationNumber } = page.content.laboratory;
  const { caption, sentence } = page.words;
  return said === "" && !accreditationNumber
    ? null
    : part(
        page,
        { caption: caption("accreditation") },
        lines(page, [
          ...(said === "" ? [] : [sentence(said)]),
          ...(accreditationNumber
            ? [together(" ", caption("accreditationNumber"), [accreditationNumber])]
            : []),
        ]),
      );
};

/** 7.8.7: apart from the results, marked as opinions, each with its basis and whose it is. */
const opinions = (page: Spoken): Html | null => {
  const { content, words } = page;
  const { caption, sentence } = words;
  return content.opinions
    ? part(
        page,
        { caption: caption("opinions") },
        el(
          "div",
          { class: "opinions" },
          lines(page, [caption("opinions.note")]),
          content.opinions.map(({ text, basis, by, on }) =>
            lines(page, [
              sentence(text),
              together(": ", caption("opinionBasis"), sentence(basis)),
              [`${by}, ${on}`],
            ]),
          ),
        ),
      )
    : null;
};

const evidenceOf = (
  page: Spoken,
  { engineVersion, evaluation, inputsDigest }: EvidenceOf,
  run: string,
): Html =>
  facts(page, [
    [page.words.caption("run"), all(run)],
    [page.words.caption("engine"), all(engineVersion)],
    [page.words.caption("evaluation"), all(String(evaluation))],
    [page.words.caption("inputsHash"), el("code", {}, inputsDigest)],
  ]);

type EvidenceOf = {
  readonly engineVersion: string;
  readonly evaluation: number;
  readonly inputsDigest: string;
};

/** Each evaluation once, however many sets rest on it. */
const evaluationsOf = (content: CertificateContent) => [
  ...new Map([content, ...(content.sets ?? [])].map((one) => [one.evidence.inputsDigest, one])).values(),
];

const computedWith = (page: Spoken): Html => {
  const { content, contentHash, words } = page;
  const { caption, sentence } = words;
  const { catalogue } = content;
  return part(
    page,
    { caption: caption("computedWith") },
    ...evaluationsOf(content).map((one) => evidenceOf(page, one.evidence, one.run.number)),
    lines(page, content.evidenceStatement ? [sentence(content.evidenceStatement)] : []),
    facts(page, [
      [caption("contentHash"), el("code", {}, contentHash)],
      [
        caption("catalogue"),
        catalogue ? all(`${catalogue.version}, `, el("code", {}, `SHA-256 ${catalogue.sha256}`)) : null,
      ],
    ]),
  );
};

/** The hash stands after "#": the server that is asked never sees it. */
const check = (page: Spoken): Html | null => {
  const { content, contentHash, words } = page;
  if (!content.authenticity) return null;
  const href = `${content.authenticity.address}#${contentHash}`;
  return part(
    page,
    { caption: words.caption("check") },
    el("p", {}, el("a", { href }, content.authenticity.address)),
  );
};

/** 7.8.2.1 o: who authorised it, what that means, and who measured. */
const authorised = (page: Spoken): Html => {
  const { content, words, line } = page;
  const { caption, sentence } = words;
  const { name, role, on, at, meaning } = content.authorisedBy;
  const performers = new Set([content.performedBy, ...(content.sets ?? []).map((set) => set.performedBy)]);
  return part(
    page,
    { caption: caption("authorisedBy") },
    el("p", {}, el("strong", {}, name)),
    lines(page, [
      together(", ", sentence(role), [on]),
      ...(meaning ? [sentence(meaning)] : []),
      ...(at ? [together(" ", caption("signed"), [at])] : []),
      together(" ", caption("measuredBy"), [[...performers].join(", ")]),
    ]),
    content.log
      ? facts(page, [
          [
            caption("logAtSigning"),
            all(`${content.log.sequence}, `, el("code", {}, `SHA-256 ${content.log.hash}`)),
          ],
        ])
      : all(),
    content.evidence.exception === "" ? all() : line(sentence(content.evidence.exception)),
  );
};

/** 7.8.2.1 k, l, n, o, p; 7.8.4.1 a, d; 7.8.4.3; 7.8.7: what else must be said, and who authorised it. */
export const closing = (page: Spoken): Html => {
  const { content, words } = page;
  const { caption } = words;
  return all(
    sentences(page, caption("uncertainty"), [content.uncertaintyStatement]),
    sentences(page, caption("adjustment"), [content.adjustment]),
    content.deviations.length > 0
      ? sentences(page, caption("deviations"), content.deviations)
      : part(page, { caption: caption("deviations") }, lines(page, [caption("noDeviations")])),
    sentences(page, caption("exclusions"), content.exclusions),
    sentences(page, caption("repeats"), content.repeats),
    sentences(page, caption("sampling"), [content.sampling]),
    sentences(page, caption("externalResults"), [content.externalResults]),
    accreditation(page),
    opinions(page),
    sentences(page, caption("statements"), content.statements),
    computedWith(page),
    check(page),
    authorised(page),
  );
};
