import type { CertificateContent } from "@/lib/domain/certificate/content";
import { caption, composed, nameOf, rich, unspoken, type Voice } from "./voice";
import { contact, countryOf, identification } from "./write-core";
import { element, type Xml } from "./xml";

type Item = CertificateContent["item"];

/** Each item once, however many sets it has. */
export const itemsOf = ({ item, sets }: CertificateContent): readonly Item[] =>
  sets ? [...new Map(sets.map((set) => [set.item.tag, set.item])).values()] : [item];

export const itemId = (content: CertificateContent, tag: string): string =>
  `item${itemsOf(content).findIndex((item) => item.tag === tag) + 1}`;

/** 7.8.2.1 g: what it is, both its numbers, and the condition it came in. */
const itemElement = (voice: Voice, content: CertificateContent, item: Item): Xml =>
  element(
    "dcc:item",
    [
      nameOf(composed(voice, (_, word) => `${word("thermocouple")} ${item.typeLetter}`)),
      rich("dcc:description", [
        composed(voice, (say, word) => `${word("construction")}: ${say(item.construction)}`),
        composed(voice, (say, word) => `${word("protection")}: ${say(item.protection)}`),
        ...(item.material === undefined
          ? []
          : [composed(voice, (say, word) => `${word("material")}: ${say(item.material ?? "")}`)]),
        composed(voice, (say, word) => `${word("condition")}: ${say(item.condition)}`),
        ...item.checks.filter((check) => check.trim() !== "").map((check) => voice.contents(check)),
      ]),
      element("dcc:identifications", [
        identification(voice, "manufacturer", item.serial, "serial", "basic_serialNumber"),
        identification(voice, "calibrationLaboratory", item.tag, "tag"),
      ]),
    ],
    { id: itemId(content, item.tag) },
  );

export const items = (voice: Voice, content: CertificateContent): Xml =>
  element(
    "dcc:items",
    itemsOf(content).map((item) => itemElement(voice, content, item)),
  );

/** 7.8.2.1 b. No seal is declared: the XML itself bears none, the document it is attached to does. */
export const laboratory = (content: CertificateContent): Xml =>
  element("dcc:calibrationLaboratory", [
    content.laboratory.accreditationNumber
      ? element("dcc:calibrationLaboratoryCode", content.laboratory.accreditationNumber.trim())
      : null,
    contact("dcc:contact", content.laboratory, countryOf(content)),
  ]);

type Person = {
  readonly name: string;
  readonly role: string;
  readonly isMainSigner: boolean;
  readonly said: readonly (readonly Xml[])[];
};

const person = ({ name, role, isMainSigner, said }: Person): Xml =>
  element("dcc:respPerson", [
    element("dcc:person", [nameOf([unspoken(name)])]),
    rich("dcc:description", said),
    element("dcc:role", role.trim()),
    element("dcc:mainSigner", String(isMainSigner)),
  ]);

/** What the signature means, and its moment, where the content says them. */
const signature = (voice: Voice, { meaning, at }: CertificateContent["authorisedBy"]) => [
  caption(voice, "authorising"),
  ...(meaning ? [voice.contents(meaning)] : []),
  ...(at ? [[unspoken(at)]] : []),
];

/** 7.8.2.1 o: who authorised it is the main signer; who measured stands beside. */
export const persons = (voice: Voice, content: CertificateContent): Xml => {
  const performers = new Set(
    [content.performedBy, ...(content.sets ?? []).map((set) => set.performedBy)].filter(
      (name) => name.trim() !== "",
    ),
  );
  return element("dcc:respPersons", [
    person({ ...content.authorisedBy, isMainSigner: true, said: signature(voice, content.authorisedBy) }),
    ...[...performers].map((name) =>
      person({ name, role: "Measurement", isMainSigner: false, said: [caption(voice, "measured")] }),
    ),
  ]);
};
