import { type LabelKey, label } from "@/lib/domain/certificate/catalogue/catalogue";
import type { CertificateStandard } from "@/lib/domain/certificate/content";
import type { DocumentLanguage } from "@/lib/domain/certificate/document-language";
import { caption, composed, nameOf, rich, type Voice } from "./voice";
import type { Word } from "./words";
import { identification } from "./write-core";
import { element, type Xml } from "./xml";

const roles: Readonly<Record<CertificateStandard["role"], Word>> = {
  reference: "referenceStandard",
  voltmeter: "voltmeter",
  scanner: "scanner",
  junction: "junction",
};

const routes: Readonly<Record<string, LabelKey>> = {
  nmi: "route.nmi",
  accredited: "route.accredited",
  "in-house": "route.in-house",
  other: "route.other",
};
const routeIn = (route: string, language: DocumentLanguage): string => {
  const key = routes[route];
  return key ? label(key, language) : route;
};

/** The certificate's own hash where its file is kept; "none" says plainly that there is nothing to compare with. */
const certificate = (voice: Voice, standard: CertificateStandard): Xml | null => {
  if (standard.calibrationCertificate.trim() === "") return null;
  const { documentSha256: sha256 } = standard;
  const facts: readonly (readonly Xml[])[] = [
    ...(standard.issuer ? [composed(voice, (_, word) => `${word("issuer")}: ${standard.issuer}`)] : []),
    ...(standard.accreditation
      ? [composed(voice, (_, word) => `${word("accreditation")}: ${standard.accreditation}`)]
      : []),
    ...(standard.route
      ? [composed(voice, (_, word, language) => `${word("route")}: ${routeIn(standard.route, language)}`)]
      : []),
    ...(standard.performedOn
      ? [composed(voice, (_, word) => `${word("performedOn")}: ${standard.performedOn}`)]
      : []),
    ...(standard.dueOn ? [composed(voice, (_, word) => `${word("due")}: ${standard.dueOn}`)] : []),
    ...(sha256 ? [] : [caption(voice, "noFile")]),
  ];
  return element("dcc:certificate", [
    element("dcc:referral", caption(voice, "calibrationCertificate")),
    element("dcc:referralID", standard.calibrationCertificate.trim()),
    element("dcc:procedure", sha256 ? "SHA-256" : "none"),
    element("dcc:value", sha256 ?? "none"),
    rich("dcc:description", facts),
    // No certificate is composed with a calibration out of date; an instrument without one has no such element.
    element("dcc:inValidityRange", "true"),
    element("dcc:traceable", "true"),
  ]);
};

/** 7.8.4.1 c: standards and instruments, with the certificate each stands on. `prefix` keeps ids apart between sets. */
export const equipment = (voice: Voice, standards: readonly CertificateStandard[], prefix: string): Xml =>
  element(
    "dcc:measuringEquipments",
    standards.map((standard, at) =>
      element(
        "dcc:measuringEquipment",
        [
          nameOf(caption(voice, roles[standard.role])),
          rich("dcc:description", [
            voice.contents(standard.description),
            ...(standard.isExternal ? [caption(voice, "externalStandard")] : []),
            ...(standard.calibrationCertificate.trim() === "" ? [caption(voice, "noCertificate")] : []),
          ]),
          certificate(voice, standard),
          element("dcc:identifications", [
            identification(voice, "calibrationLaboratory", standard.tag, "tag"),
            identification(voice, "manufacturer", standard.serial, "serial", "basic_serialNumber"),
          ]),
        ],
        { id: `${prefix}standard${at + 1}`, refType: "basic_standardUsed" },
      ),
    ),
  );
