import { catalogue } from "@/lib/domain/certificate/catalogue/catalogue";
import type { CertificateContent } from "@/lib/domain/certificate/content";
import { own } from "@/lib/domain/dcc/terms";
import { caption, nameOf, rich, unspoken, type Voice } from "./voice";
import type { Word } from "./words";
import { element, elementOf, type Xml } from "./xml";

export const identification = (
  voice: Voice,
  issuer: "manufacturer" | "calibrationLaboratory" | "customer" | "other",
  value: string,
  word: Word,
  refType: string | null = null,
): Xml | null =>
  value.trim() === ""
    ? null
    : element(
        "dcc:identification",
        [element("dcc:issuer", issuer), element("dcc:value", value.trim()), nameOf(caption(voice, word))],
        { refType },
      );

/** ISO 3166 keeps ZZ for users: the country is not known. A certificate composed since it is stated never needs it. */
const unknownCountry = "ZZ";
export const countryOf = ({ laboratory }: CertificateContent): string =>
  laboratory.countryCode ?? unknownCountry;

/** The content says where in a sentence; the DCC wants one word of five. */
const placeOf = ({ laboratory: { placeOfPerformance: said } }: CertificateContent): string => {
  if (said.startsWith(catalogue.texts["place.customer-site"].en)) return "customer";
  return said === catalogue.texts["place.laboratory"].en ? "laboratory" : "other";
};

const languages = ({ languages: all }: Voice): readonly Xml[] => [
  ...all.map((language) => element("dcc:usedLangCodeISO639_1", language)),
  // The first is the one that binds.
  ...all.slice(0, 1).map((language) => element("dcc:mandatoryLangCodeISO639_1", language)),
];

/** 7.8.8.3: that it is an amendment or a replacement, of which certificate, and its hash. */
const previous = (voice: Voice, { amends }: CertificateContent): readonly Xml[] =>
  amends
    ? [
        element("dcc:reportAmendedSubstituted", [
          element("dcc:typeOfChange", amends.kind === "amendment" ? "amended" : "substituted"),
          element("dcc:replacedUniqueIdentifier", amends.number),
        ]),
        element("dcc:previousReport", [
          element("dcc:referral", caption(voice, amends.kind === "amendment" ? "amended" : "replaced")),
          element("dcc:referralID", amends.number),
          element("dcc:procedure", "SHA-256"),
          element("dcc:value", amends.contentHash),
          rich("dcc:description", [caption(voice, "previousHash")]),
        ]),
      ]
    : [];

/** 7.8.2.1 c, d, h, i, j, and what names the certificate beyond its number. */
export const coreData = (voice: Voice, content: CertificateContent, contentHash: string): Xml =>
  element("dcc:coreData", [
    element("dcc:countryCodeISO3166_1", countryOf(content)),
    ...languages(voice),
    element("dcc:uniqueIdentifier", content.number),
    elementOf("dcc:identifications", [
      identification(
        voice,
        "calibrationLaboratory",
        content.order.number,
        "orderNumber",
        "basic_orderNumber",
      ),
      identification(voice, "customer", content.order.purchaseOrder, "purchaseOrder"),
      identification(voice, "calibrationLaboratory", contentHash, "contentHash", own("contentHash")),
      identification(
        voice,
        "calibrationLaboratory",
        content.authenticity?.address ?? "",
        "authenticity",
        own("authenticity"),
      ),
      identification(
        voice,
        "calibrationLaboratory",
        content.log ? `${content.log.sequence} ${content.log.hash}` : "",
        "log",
        own("log"),
      ),
    ]),
    element("dcc:receiptDate", content.receivedOn),
    element("dcc:beginPerformanceDate", content.performedFrom),
    element("dcc:endPerformanceDate", content.performedTo),
    element("dcc:performanceLocation", placeOf(content)),
    element("dcc:issueDate", content.issuedOn),
    ...previous(voice, content),
  ]);

/** Lines of an address stay lines: which of them is the town, nobody said. */
const location = (lines: readonly string[], country: string | null): Xml =>
  element("dcc:location", [
    country === null ? null : element("dcc:countryCode", country),
    ...lines.filter((line) => line.trim() !== "").map((line) => rich("dcc:further", [[unspoken(line)]])),
  ]);

const mailAddress = /[^\s,;<>]+@[^\s,;<>]+/;

/** A contact is one line of words; a mail address in it is also given as one. */
export const contact = (
  name: string,
  party: { readonly name: string; readonly addressLines: readonly string[]; readonly contact: string },
  country: string | null,
): Xml => {
  const mail = mailAddress.exec(party.contact)?.[0];
  return element(name, [
    nameOf([unspoken(party.name)]),
    mail === undefined ? null : element("dcc:eMail", mail),
    location([...party.addressLines, ...(party.contact === mail ? [] : [party.contact])], country),
  ]);
};
