import type { CertificateContent } from "@/lib/domain/certificate/content";
import { own } from "@/lib/domain/dcc/terms";
import { caption, composed, nameOf, rich, unspoken, type Voice } from "./voice";
import type { Word } from "./words";
import { element, elementOf, type Xml } from "./xml";

const standard = "ISO/IEC 17025:2017";

type Said = {
  readonly word: Word;
  readonly clause: string;
  readonly refType?: string;
  readonly norm?: string;
  readonly traceable?: boolean;
  readonly link?: string;
  readonly declaration: readonly (readonly Xml[])[];
  readonly date?: string;
};

const statement = (
  voice: Voice,
  { word, clause, refType = own("statement"), norm = standard, traceable, link, declaration, date }: Said,
): Xml =>
  element(
    "dcc:statement",
    [
      nameOf(caption(voice, word)),
      traceable === undefined ? null : element("dcc:traceable", String(traceable)),
      element("dcc:norm", norm),
      element("dcc:reference", clause),
      link === undefined ? null : element("dcc:link", link),
      rich("dcc:declaration", declaration),
      date === undefined ? null : element("dcc:date", date),
    ],
    { refType },
  );

/** 7.8.6.2: which results, which specification, which rule, and its risk: all wherever pass or fail is said. */
const conformity = (voice: Voice, { conformity: said }: CertificateContent): readonly Said[] =>
  said
    ? [
        {
          word: "conformity",
          clause: "7.8.6",
          refType: "basic_conformity",
          norm: said.specification.split(";")[0]?.trim() ?? standard,
          declaration: [said.specification, said.rule, said.risk, said.agreed].map(voice.contents),
        },
      ]
    : [];

const each = (
  voice: Voice,
  word: Word,
  clause: string,
  sentences: readonly string[] | undefined,
): readonly Said[] =>
  (sentences ?? [])
    .filter((sentence) => sentence.trim() !== "")
    .map((sentence) => ({ word, clause, declaration: [voice.contents(sentence)] }));

/** 7.8.7: marked as what it is, with its basis and who gave it. */
const opinions = (voice: Voice, content: CertificateContent): readonly Said[] =>
  (content.opinions ?? []).map(({ text, basis, by, on }) => ({
    word: "opinion",
    clause: "7.8.7",
    refType: own("opinion"),
    declaration: [
      voice.contents(text),
      composed(voice, (say, word) => `${word("basis")}: ${say(basis)}`),
      [unspoken(by)],
    ],
    ...(/^\d{4}-\d\d-\d\d$/.test(on) ? { date: on } : {}),
  }));

const computed = (voice: Voice, { evidence, run, sets }: CertificateContent): Said => ({
  word: "computedWith",
  clause: "7.11.2",
  declaration: (sets?.map((set) => ({ evidence: set.evidence, run: set.run })) ?? [{ evidence, run }]).map(
    (one) =>
      composed(
        voice,
        (_, word) =>
          `${word("engine")} ${one.evidence.engineVersion}, ${word("evaluation")} ${one.evidence.evaluation} ${word("ofRun")} ${one.run.number}; ${word("inputs")} ${one.evidence.inputsDigest}`,
      ),
  ),
});

const deviations = (voice: Voice, { deviations: all }: CertificateContent): readonly Said[] =>
  all.length === 0
    ? [{ word: "deviation", clause: "7.8.2.1 n", declaration: [caption(voice, "noDeviations")] }]
    : each(voice, "deviation", "7.8.2.1 n", all);

/** 7.8.8.1: why, and of an amendment each thing it says otherwise, in the words of both certificates. */
const change = (voice: Voice, { amends }: CertificateContent): readonly Said[] =>
  each(voice, "change", "7.8.8", amends ? [amends.reason] : undefined).map((said) => ({
    ...said,
    declaration: [
      ...said.declaration,
      ...(amends?.changes ?? []).map(({ what, was, now }) =>
        composed(voice, (say, word) => {
          const quoted = (text: string) => (text === "" ? word("nothing") : `“${text}”`);
          return `${say(what)}: ${word("was")} ${quoted(was)}, ${word("now")} ${quoted(now)}`;
        }),
      ),
    ],
  }));

/** What a certificate must say in words, in every language it speaks: ISO/IEC 17025:2017, 7.8, clause by clause. */
export const statements = (voice: Voice, content: CertificateContent): Xml | null => {
  const { laboratory } = content;
  const said: readonly Said[] = [
    {
      word: "traceability",
      clause: "7.8.4.1 c",
      refType: "basic_metrologicallyTraceable",
      traceable: true,
      declaration: [voice.contents(content.traceabilityStatement)],
    },
    ...change(voice, content),
    ...each(voice, "form", "7.8.1.3", content.formStatement ? [content.formStatement] : undefined),
    ...each(voice, "place", "7.8.2.1 c", [laboratory.placeOfPerformance]),
    ...each(voice, "accreditation", "ILAC-P8", [laboratory.accreditation]),
    ...each(voice, "scope", "ILAC-P8", content.scopeStatement ? [content.scopeStatement] : undefined),
    ...conformity(voice, content),
    ...each(voice, "adjustment", "7.8.4.1 d", [content.adjustment]),
    ...deviations(voice, content),
    ...each(voice, "exclusion", "7.8.2.1 n", content.exclusions),
    ...each(voice, "thermalHistory", "7.8.2.1 g", content.thermalHistory),
    ...each(voice, "repeat", "7.8.2.1 m", content.repeats),
    ...each(voice, "sampling", "7.8.2.1 k", [content.sampling]),
    ...each(voice, "external", "7.8.2.1 p", [content.externalResults]),
    ...each(voice, "statement", "7.8.2.1 l", content.statements),
    ...opinions(voice, content),
    ...each(voice, "evidence", "7.5", content.evidenceStatement ? [content.evidenceStatement] : undefined),
    ...each(voice, "evidence", "7.8.1.1", [content.evidence.exception]),
    computed(voice, content),
  ];
  return elementOf(
    "dcc:statements",
    said.map((one) => statement(voice, one)),
  );
};
