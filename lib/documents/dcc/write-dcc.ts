import type { CertificateContent } from "@/lib/domain/certificate/content";
import { type MeasuredSet, measuredSets } from "./measured-set";
import { refTypeDefinitions } from "./ref-types";
import { caption, composed, nameOf, rich, type Voice, voiceOf } from "./voice";
import { conditions } from "./write-conditions";
import { contact, coreData } from "./write-core";
import { derived } from "./write-derived";
import { equipment } from "./write-equipment";
import { fittedFunction } from "./write-function";
import { itemId, items, laboratory, persons } from "./write-parties";
import { results } from "./write-results";
import { statements } from "./write-statements";
import { element, type Xml, xmlDocument } from "./xml";

/** Of what is written here: another form of the same content raises it. */
const writerRelease = "1.0.0";

const software = (voice: Voice): Xml =>
  element("dcc:dccSoftware", [
    element("dcc:software", [
      nameOf(caption(voice, "software")),
      element("dcc:release", writerRelease),
      element("dcc:type", "application"),
    ]),
  ]);

const administrative = (voice: Voice, content: CertificateContent, contentHash: string): Xml =>
  element("dcc:administrativeData", [
    software(voice),
    refTypeDefinitions(
      voice,
      measuredSets(content).some(({ run }) => run.room !== undefined),
    ),
    coreData(voice, content, contentHash),
    items(voice, content),
    laboratory(content),
    persons(voice, content),
    contact("dcc:customer", content.customer, null),
    statements(voice, content),
  ]);

/** 7.8.2.1 f and 7.8.4.1 a: how it was measured, and what U is. */
const methods = (voice: Voice, content: CertificateContent): Xml =>
  element("dcc:usedMethods", [
    element("dcc:usedMethod", [
      nameOf(voice.contents(content.method.name)),
      rich("dcc:description", [voice.contents(content.method.description)]),
    ]),
    element(
      "dcc:usedMethod",
      [
        nameOf(caption(voice, "uncertainty")),
        rich("dcc:description", [voice.contents(content.uncertaintyStatement)]),
        element("dcc:norm", "EA-4/02"),
      ],
      { refType: "basic_uncertainty" },
    ),
  ]);

const engine = (voice: Voice, content: CertificateContent): Xml => {
  const releases = new Set([
    content.evidence.engineVersion,
    ...(content.sets ?? []).map(({ evidence }) => evidence.engineVersion),
  ]);
  return element(
    "dcc:usedSoftware",
    [...releases].map((release) =>
      element("dcc:software", [
        nameOf(caption(voice, "engine")),
        element("dcc:release", release),
        element("dcc:type", "library"),
      ]),
    ),
  );
};

const measurement = (voice: Voice, content: CertificateContent, set: MeasuredSet): Xml => {
  const isAnnealed = content.sets?.some(({ kind }) => kind === "after-anneal") ?? false;
  const kind = set.kind === "after-anneal" ? "afterAnneal" : "asReceived";
  return element(
    "dcc:measurementResult",
    [
      nameOf(
        composed(
          voice,
          (_, word) =>
            `${word("calibration")}, ${set.item.serial} (${set.item.tag})${isAnnealed ? `, ${word(kind)}` : ""}`,
        ),
      ),
      equipment(voice, set.standards, set.prefix),
      conditions(voice, set, isAnnealed),
      element("dcc:results", [
        results(voice, content, set),
        set.function ? fittedFunction(voice, set.function) : null,
      ]),
    ],
    { refId: itemId(content, set.item.tag) },
  );
};

/**
 * The certificate as a digital calibration certificate, DCC 3.3.0 with D-SI 2.2.1 (https://ptb.de/dcc, https://ptb.de/si):
 * the content and its hash in, the same bytes out each time. Every number is the one printed; where the unit differs
 * (µV in V, °C in K) it is the same number exactly, and for °F it bears three decimals more.
 */
export const writeDcc = (content: CertificateContent, contentHash: string): string => {
  const voice = voiceOf(content);
  return xmlDocument(
    element(
      "dcc:digitalCalibrationCertificate",
      [
        administrative(voice, content, contentHash),
        element("dcc:measurementResults", [
          methods(voice, content),
          engine(voice, content),
          ...measuredSets(content).map((set) => measurement(voice, content, set)),
          ...derived(voice, content),
        ]),
      ],
      {
        "xmlns:dcc": "https://ptb.de/dcc",
        "xmlns:si": "https://ptb.de/si",
        "xmlns:xsi": "http://www.w3.org/2001/XMLSchema-instance",
        "xsi:schemaLocation": "https://ptb.de/dcc https://ptb.de/dcc/v3.3.0/dcc.xsd",
        schemaVersion: "3.3.0",
      },
    ),
  );
};
