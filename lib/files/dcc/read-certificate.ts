import type { DccCertificate, DccItem, DccResult } from "@/lib/domain/calibration/dcc-certificate";
import { dataOf, quantityOf, statementOf } from "./read-data";
import {
  booleanOf,
  contactOf,
  identificationsOf,
  nameOf,
  referralOf,
  refTypesOf,
  textOf,
  wordOf,
  wordsOf,
} from "./read-parts";
import { surroundingsOf } from "./read-surroundings";
import { embeddedFilesOf, setAsideOf } from "./set-aside";
import {
  childNamed,
  childrenNamed,
  everyElement,
  placeOf,
  signatureNamespace,
  type XmlElement,
} from "./xml-element";

const itemsOf = (list: XmlElement | null): readonly DccItem[] =>
  childrenNamed(list, "item").map((item) => ({
    name: nameOf(item),
    description: textOf(childNamed(item, "description")),
    manufacturer: nameOf(childNamed(item, "manufacturer") ?? childNamed(list, "manufacturer")),
    model: wordOf(item, "model"),
    identifications: identificationsOf(item),
    quantities: childrenNamed(childNamed(item, "itemQuantities"), "itemQuantity").map(quantityOf),
    subItems: itemsOf(childNamed(item, "subItems")),
    id: item.attributes.get("id") ?? null,
    place: placeOf(item),
  }));

const resultsOf = (measurement: XmlElement): readonly DccResult[] =>
  childrenNamed(measurement, "measurementResult").flatMap((group) =>
    childrenNamed(childNamed(group, "results"), "result").map((result) => ({
      group: nameOf(group),
      name: nameOf(result),
      description: textOf(childNamed(result, "description")),
      refTypes: refTypesOf(result),
      data: dataOf(childNamed(result, "data")),
      place: placeOf(result),
    })),
  );

/** Said of all results or of one, beside what is said at the head of the certificate. */
const statementsOf = (administrative: XmlElement, measurement: XmlElement) =>
  [
    ...childrenNamed(childNamed(administrative, "statements"), "statement"),
    ...[measurement, ...childrenNamed(measurement, "measurementResult")].flatMap((element) =>
      childrenNamed(childNamed(element, "measurementMetaData"), "metaData"),
    ),
  ].map(statementOf);

const accreditationWords = /accredit|akkredit|CIPM|\bILAC\b|\bDAkkS\b|\bUKAS\b|\bMRA\b/i;

const accreditationHints = (administrative: XmlElement): DccCertificate["accreditationHints"] =>
  [...everyElement(administrative)]
    .filter(({ children, text }) => children.length === 0 && accreditationWords.test(text))
    .map((element) => ({ text: element.text.replace(/\s+/g, " ").trim(), place: placeOf(element) }));

const signaturesOf = (root: XmlElement, laboratory: XmlElement): DccCertificate["signatures"] => {
  const persons = childrenNamed(childNamed(root, "administrativeData", "respPersons"), "respPerson");
  const isDeclared = (name: string) =>
    [laboratory, ...persons].some((element) => booleanOf(element, name) === true);
  return {
    xmlSignatures: root.children
      .filter(({ name, namespace }) => name === "Signature" && namespace === signatureNamespace)
      .map(placeOf),
    isSealDeclared: isDeclared("cryptElectronicSeal"),
    isSignatureDeclared: isDeclared("cryptElectronicSignature"),
    isTimeStampDeclared: isDeclared("cryptElectronicTimeStamp"),
  };
};

const coreOf = (core: XmlElement) => {
  const change = childNamed(core, "reportAmendedSubstituted");
  return {
    uniqueIdentifier: wordOf(core, "uniqueIdentifier") ?? "",
    countryCode: wordOf(core, "countryCodeISO3166_1") ?? "",
    languages: {
      used: wordsOf(core, "usedLangCodeISO639_1"),
      mandatory: wordsOf(core, "mandatoryLangCodeISO639_1"),
    },
    identifications: identificationsOf(core),
    receiptDate: wordOf(core, "receiptDate"),
    beginPerformanceDate: wordOf(core, "beginPerformanceDate") ?? "",
    endPerformanceDate: wordOf(core, "endPerformanceDate") ?? "",
    issueDate: wordOf(core, "issueDate"),
    performanceLocation: wordOf(core, "performanceLocation") ?? "",
    change: change && {
      typeOfChange:
        wordOf(change, "typeOfChange") === "amended" ? ("amended" as const) : ("substituted" as const),
      replacedUniqueIdentifier: wordOf(change, "replacedUniqueIdentifier") ?? "",
      place: placeOf(change),
    },
    previousReport: referralOf(childNamed(core, "previousReport")),
  };
};

/** From a tree whose structure was found whole: what is mandatory is there. */
export const readCertificate = (root: XmlElement, isCheckedBySchema: boolean): DccCertificate => {
  const part = (name: string): XmlElement => childNamed(root, "administrativeData", name) ?? root;
  const administrative = childNamed(root, "administrativeData") ?? root;
  const measurement = childNamed(root, "measurementResults") ?? root;
  const laboratory = part("calibrationLaboratory");
  return {
    ...coreOf(part("coreData")),
    schemaVersion: root.attributes.get("schemaVersion") ?? "",
    isCheckedBySchema,
    issuer: {
      code: wordOf(laboratory, "calibrationLaboratoryCode"),
      contact: contactOf(childNamed(laboratory, "contact") ?? laboratory),
    },
    customer: contactOf(part("customer")),
    responsible: childrenNamed(part("respPersons"), "respPerson").map((person) => ({
      name: nameOf(childNamed(person, "person")),
      role: wordOf(person, "role"),
      isMainSigner: booleanOf(person, "mainSigner") === true,
      place: placeOf(person),
    })),
    items: itemsOf(part("items")),
    statements: statementsOf(administrative, measurement),
    ...surroundingsOf(measurement),
    results: resultsOf(measurement),
    software: childrenNamed(part("dccSoftware"), "software").map((software) => ({
      name: nameOf(software),
      release: wordOf(software, "release") ?? "",
      place: placeOf(software),
    })),
    accreditationHints: accreditationHints(administrative),
    signatures: signaturesOf(root, laboratory),
    embeddedFiles: embeddedFilesOf(root),
    setAside: setAsideOf(root),
  };
};
