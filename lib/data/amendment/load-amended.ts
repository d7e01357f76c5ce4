import { type AmendmentKind, readCorrections } from "@/lib/domain/amendment/amendment";
import { composeAmendment } from "@/lib/domain/amendment/compose-amendment";
import { decideReplaceable } from "@/lib/domain/amendment/decide-amendment";
import type { BundleMember } from "@/lib/domain/certificate/bundle";
import { composeBundle } from "@/lib/domain/certificate/compose-bundle";
import { CertificateContent } from "@/lib/domain/certificate/content";
import type { CertificateIssue } from "@/lib/domain/certificate/parts";
import { ok, type Result, refuse } from "@/lib/domain/refusal";
import { loadBundle } from "../certificate/load-bundle";
import { hex } from "../hex";
import type { Tx } from "../in-scope";
import { loadReviewRun } from "../review/load-review-run";
import type { OpenAmendment } from "./amendment-store";
import { type CertificateRow, loadMeasured } from "./load-measured";
import { sensorsOn } from "./sensors-on";

/** What the new certificate rests on, and how it is worded once it has a number, or before. */
export type Amended = {
  readonly members: readonly BundleMember[];
  /** Whose sensor, run and evaluation it is stored under. */
  readonly filedUnder: Pick<BundleMember, "sensorId" | "runId" | "evaluationId">;
  /** Who had a hand in results that are new; none where the results stay. */
  readonly performerIds: readonly string[];
  readonly compose: (issue: CertificateIssue | null) => Result<CertificateContent>;
};

type Said = Omit<Amended, "compose"> & { readonly said: CertificateContent };

const asBefore = async (tx: Tx, certificate: CertificateRow): Promise<Result<Said>> => {
  const members = await loadMeasured(tx, certificate);
  if (!members.ok) return members;
  const said = CertificateContent.parse(JSON.parse(certificate.content));
  return ok({ said, members: members.value, filedUnder: certificate, performerIds: [] });
};

const asEvaluatedSince = async (tx: Tx, certificate: CertificateRow): Promise<Result<Said>> => {
  const review = await loadReviewRun(tx, certificate.runId);
  if (!review?.evaluation) return refuse("not-found", "This run is not here.");
  const before = await tx.evaluation.findUniqueOrThrow({ where: { id: certificate.evaluationId } });
  const latest = review.evaluation.sequence;
  const replaceable = decideReplaceable({
    run: review.run.number,
    evaluation: before.sequence,
    latest,
  });
  if (!replaceable.ok) return replaceable;
  const bundle = await loadBundle(tx, review, await sensorsOn(tx, certificate));
  if (!bundle.ok) return bundle;
  const said = composeBundle(bundle.value, null);
  if (!said.ok) return said;
  const { members, filedUnder, performerIds } = bundle.value;
  return ok({ said: said.value, members, filedUnder, performerIds });
};

/** What is asked for, as a certificate: refused where it cannot be one. */
export const loadAmended = async (
  tx: Tx,
  certificate: CertificateRow,
  amendment: OpenAmendment,
): Promise<Result<Amended>> => {
  const kind = amendment.kind as AmendmentKind;
  const loaded = await (kind === "replacement" ? asEvaluatedSince : asBefore)(tx, certificate);
  if (!loaded.ok) return loaded;
  const { said, ...rest } = loaded.value;
  const { number, contentHash } = certificate;
  const amends = { kind, number, contentHash: hex(contentHash), reason: amendment.reason };
  const corrections = readCorrections(amendment.corrections);
  return ok({ ...rest, compose: (issue) => composeAmendment(said, amends, corrections, issue) });
};
