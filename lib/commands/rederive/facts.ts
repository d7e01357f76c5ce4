import { hex } from "@/lib/data/hex";
import { agreementEvents } from "@/lib/domain/agreement/events";
import type { StoredEvent } from "@/lib/domain/audit/chain";
import type { EventDefinition } from "@/lib/domain/audit/define-event";
import { certificateEvents } from "@/lib/domain/certificate/events";
import { invoicingEvents } from "@/lib/domain/invoicing/events";
import { quotationEvents } from "@/lib/domain/quotation/events";
import { runEvents } from "@/lib/domain/run/events";
import { sealEvents } from "@/lib/domain/seal/events";
import { type Facts, untold } from "./step";

export type Fact = readonly [key: string, value: string];

export const blockFact = (runId: string, sequence: number, root: string): Fact => [
  `scan block ${sequence} of run ${runId}`,
  `root ${root}`,
];

export const evaluationFact = (
  runId: string,
  sequence: number,
  inputsDigest: string,
  engineVersion: string,
): Fact => [`evaluation ${sequence} of run ${runId}`, `inputs ${inputsDigest}, engine ${engineVersion}`];

export const certificateFact = (id: string, number: string, contentHash: string): Fact => [
  `certificate ${id}`,
  `number ${number}, content ${contentHash}`,
];

export const documentFact = (id: string, sha256: string, renderer: string): Fact => [
  `document of certificate ${id}`,
  `bytes ${sha256}, renderer ${renderer}`,
];

export const dccFact = (id: string, sha256: string): Fact => [`DCC of certificate ${id}`, `bytes ${sha256}`];

/** `successor`: its number; empty where none follows. */
export const endingFact = (number: string, kind: string, successor: string): Fact => [
  `ending of certificate ${number}`,
  successor === "" ? kind : `${kind}, followed by ${successor}`,
];

type Grounds = {
  readonly decidedAt?: string | undefined;
  readonly reasonSha256?: string | undefined;
};

/** When, by whom and why it ended. What the log told before it told these is held against nothing. */
export const endingGroundsFact = (number: string, by: string, { decidedAt, reasonSha256 }: Grounds): Fact => [
  `decision that ended certificate ${number}`,
  decidedAt && reasonSha256 ? `at ${decidedAt} by ${by}, reason ${reasonSha256}` : untold,
];

export const sealKeyFact = (fingerprint: string, purpose: string): Fact => [
  `key ${fingerprint.slice(0, 16)}`,
  `fingerprint ${fingerprint}, for ${purpose}`,
];

export const keyEndingFact = (fingerprint: string, kind: string, effectiveAt: string): Fact => [
  `${kind} key ${fingerprint.slice(0, 16)}`,
  effectiveAt === "" ? kind : `${kind} from ${effectiveAt}`,
];

export const offerFact = (number: string, contentHash: string): Fact => [
  `offer ${number}`,
  `content ${contentHash}`,
];

export const agreementFact = (quotation: string, answer: string, contentHash: string): Fact => [
  `answer to offer ${quotation}`,
  `${answer}, content ${contentHash}`,
];

export const invoicingFact = (number: string, sha256: string): Fact => [
  `file ${number} for invoicing`,
  `bytes ${sha256}`,
];

type Reader = (event: StoredEvent) => Fact | undefined;

const reader =
  <P>(
    definition: EventDefinition<string, P>,
    factOf: (entityId: string, payload: P, actorId: string) => Fact | undefined,
  ): Reader =>
  (event) =>
    event.action === definition.action
      ? factOf(event.entityId, definition.payload.parse(JSON.parse(event.payload)), event.actorId)
      : undefined;

const readers: readonly Reader[] = [
  reader(runEvents.readingsReceived, (id, said) => blockFact(id, said.block, said.root)),
  reader(runEvents.evaluated, (id, said) =>
    evaluationFact(id, said.evaluation, said.inputsDigest, said.engineVersion),
  ),
  reader(certificateEvents.signedOff, (id, said) => certificateFact(id, said.number, said.contentHash)),
  reader(certificateEvents.successorSigned, (id, said) => certificateFact(id, said.number, said.contentHash)),
  reader(certificateEvents.amended, (_id, said) => endingFact(said.number, "amended", said.successor)),
  reader(certificateEvents.replaced, (_id, said) => endingFact(said.number, "replaced", said.successor)),
  reader(certificateEvents.withdrawn, (_id, said) => endingFact(said.number, "withdrawn", "")),
  reader(certificateEvents.amended, (_id, said, by) => endingGroundsFact(said.number, by, said)),
  reader(certificateEvents.replaced, (_id, said, by) => endingGroundsFact(said.number, by, said)),
  reader(certificateEvents.withdrawn, (_id, said, by) => endingGroundsFact(said.number, by, said)),
  reader(certificateEvents.issued, (id, said) => documentFact(id, said.sha256, said.renderer)),
  reader(certificateEvents.issued, (id, { dccSha256 }) => (dccSha256 ? dccFact(id, dccSha256) : undefined)),
  reader(sealEvents.keyTakenUp, (_id, said) => sealKeyFact(said.fingerprint, said.purpose)),
  reader(sealEvents.keyRetired, (_id, said) => keyEndingFact(said.fingerprint, "retired", "")),
  reader(sealEvents.keyRevoked, (_id, said) => keyEndingFact(said.fingerprint, "revoked", said.effectiveAt)),
  reader(quotationEvents.made, (_id, said) => offerFact(said.number, said.contentHash)),
  reader(agreementEvents.recorded, (_id, said) =>
    agreementFact(said.quotation, said.answer, said.contentHash),
  ),
  reader(invoicingEvents.handedOver, (_id, said) => invoicingFact(said.number, said.sha256)),
];

/** Adds what an event of the log says of records that can be recomputed. The event has been understood before. */
export const noteEvent = (facts: Facts, event: StoredEvent): void => {
  for (const read of readers) {
    const fact = read(event);
    if (fact) facts.set(...fact);
  }
};

export const noteBlock = (
  facts: Facts,
  block: { readonly runId: string; readonly sequence: number; readonly root: Uint8Array },
): void => {
  facts.set(...blockFact(block.runId, block.sequence, hex(block.root)));
};
