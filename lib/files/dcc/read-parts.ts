import type {
  DccAddress,
  DccContact,
  DccIdentification,
  DccIssuer,
  DccReferral,
  DccText,
} from "@/lib/domain/calibration/dcc-certificate";
import { childNamed, childrenNamed, listMembers, placeOf, type XmlElement } from "./xml-element";

/** Text and rich text alike; files and formulas in it are listed apart. */
export const textOf = (element: XmlElement | null): DccText =>
  [...childrenNamed(childNamed(element, "name"), "content"), ...childrenNamed(element, "content")].map(
    (content) => ({
      lang: content.attributes.get("lang") ?? null,
      text: content.text.replace(/\s+/g, " ").trim(),
    }),
  );

export const nameOf = (element: XmlElement | null): DccText => textOf(childNamed(element, "name"));

export const wordOf = (element: XmlElement | null, ...names: readonly string[]): string | null =>
  childNamed(element, ...names)?.text.trim() ?? null;

export const wordsOf = (element: XmlElement | null, name: string): readonly string[] =>
  childrenNamed(element, name).map(({ text }) => text.trim());

export const refTypesOf = (element: XmlElement): readonly string[] =>
  listMembers(element.attributes.get("refType") ?? "");

/** xs:boolean is also written 1 and 0. */
export const isTrue = (written: string): boolean => written === "true" || written === "1";

export const booleanOf = (element: XmlElement | null, name: string): boolean | null => {
  const written = wordOf(element, name);
  return written === null ? null : isTrue(written);
};

export const identificationsOf = (element: XmlElement | null): readonly DccIdentification[] =>
  childrenNamed(childNamed(element, "identifications"), "identification").map((identification) => ({
    issuer: (wordOf(identification, "issuer") ?? "other") as DccIssuer,
    value: wordOf(identification, "value") ?? "",
    name: nameOf(identification),
    refTypes: refTypesOf(identification),
    place: placeOf(identification),
  }));

/** An address may give a line more than once; a comma keeps the lines apart. */
const joined = (element: XmlElement, name: string): string | null => {
  const words = wordsOf(element, name);
  return words.length === 0 ? null : words.join(", ");
};

const addressOf = (location: XmlElement | null): DccAddress | null =>
  location && {
    street: joined(location, "street"),
    streetNo: joined(location, "streetNo"),
    postCode: joined(location, "postCode"),
    city: joined(location, "city"),
    state: joined(location, "state"),
    countryCode: joined(location, "countryCode"),
    postOfficeBox: joined(location, "postOfficeBox"),
    further: childrenNamed(location, "further").flatMap(textOf),
  };

export const contactOf = (element: XmlElement): DccContact => ({
  name: nameOf(element),
  eMail: wordOf(element, "eMail"),
  phone: wordOf(element, "phone"),
  fax: wordOf(element, "fax"),
  link: wordOf(element, "link"),
  address: addressOf(childNamed(element, "location")),
  place: placeOf(element),
});

export const referralOf = (element: XmlElement | null): DccReferral | null =>
  element && {
    referral: textOf(childNamed(element, "referral")),
    uniqueIdentifier: wordOf(element, "referralID") ?? "",
    procedure: wordOf(element, "procedure") ?? "",
    value: wordOf(element, "value") ?? "",
    inValidityRange: booleanOf(element, "inValidityRange"),
    traceable: booleanOf(element, "traceable"),
    linkedReport: referralOf(childNamed(element, "linkedReport")),
    place: placeOf(element),
  };
