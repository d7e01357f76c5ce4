import { loadOpenAmendment } from "@/lib/data/amendment/amendment-store";
import { loadAmended } from "@/lib/data/amendment/load-amended";
import type { CertificateRow } from "@/lib/data/amendment/load-measured";
import { hex } from "@/lib/data/hex";
import type { Tx } from "@/lib/data/in-scope";
import { loadDuty } from "@/lib/data/review/load-duty";
import { loadPeopleNames } from "@/lib/data/review/load-people-names";
import { loadReviewRun } from "@/lib/data/review/load-review-run";
import { nextToOpen } from "@/lib/data/review/next-to-open";
import { sha256 } from "@/lib/data/sha256";
import {
  type AmendmentKind,
  type Corrections,
  correctedFields,
  correctionLabels,
  readCorrections,
} from "@/lib/domain/amendment/amendment";
import { applyCorrections } from "@/lib/domain/amendment/apply-corrections";
import { compareRows } from "@/lib/domain/amendment/compare-rows";
import { saidNow } from "@/lib/domain/amendment/said-now";
import { CertificateContent } from "@/lib/domain/certificate/content";
import { contentHash } from "@/lib/domain/certificate/content-hash";
import { speaksOfInterval } from "@/lib/domain/review/speaks-of-interval";
import { type Actor, actorIdOf } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";

const textOf = (value: Corrections[keyof Corrections]): string =>
  value === undefined ? "" : typeof value === "string" ? value : value.join(", ");

/** What the signatory would sign, or why nobody can. */
const signableOf = async (tx: Tx, certificate: CertificateRow, asked: Parameters<typeof loadAmended>[2]) => {
  const amended = await loadAmended(tx, certificate, asked);
  const content = amended.ok ? amended.value.compose(null) : amended;
  if (!amended.ok || !content.ok)
    return {
      reviewedHash: null,
      performerIds: [] as readonly string[],
      obstacle: content.ok ? "" : content.refusal.message,
      results: [],
    };
  const { performerIds } = amended.value;
  const before = CertificateContent.parse(JSON.parse(certificate.content));
  return {
    ...{ reviewedHash: hex(contentHash(content.value, sha256)), performerIds, obstacle: "" },
    results: asked.kind === "replacement" ? compareRows(before, content.value) : [],
  };
};

/** Of new results: how many whoever asks must open before they sign, and has; null: there are none, or none yet. */
const readingOf = async (tx: Tx, actor: Actor, certificate: CertificateRow) => {
  const review = await loadReviewRun(tx, certificate.runId);
  const own = review?.replacing.filter((one) => one.certificate === certificate.number) ?? [];
  if (!review || own.length === 0) return null;
  const tags = new Set(
    review.sensors.filter(({ id }) => own.some(({ sensorId }) => sensorId === id)).map(({ tag }) => tag),
  );
  const duty = await loadDuty(tx, review, actor);
  const mine = {
    mustOpen: duty.mustOpen.filter(({ sensor }) => tags.has(sensor)),
    unopened: duty.unopened.filter(({ sensor }) => tags.has(sensor)),
  };
  return {
    mustOpen: mine.mustOpen.length,
    opened: mine.mustOpen.length - mine.unopened.length,
    next: nextToOpen(review, mine, null),
  };
};

/** What is asked for and not decided, as whoever looks at it may decide; null: nothing. */
export const askedOf = async (tx: Tx, actor: Actor, certificate: CertificateRow) => {
  const asked = await loadOpenAmendment(tx, certificate.id);
  if (!asked) return null;
  const corrections = readCorrections(asked.corrections);
  const content = CertificateContent.parse(JSON.parse(certificate.content));
  const said = saidNow(applyCorrections(content, corrections));
  const names = await loadPeopleNames(tx, [asked.askedById]);
  const { performerIds, ...signable } = await signableOf(tx, certificate, asked);
  const isSignatory = actor.kind === "staff" && may(actor.roles, "review.decide");
  const personId = actorIdOf(actor);
  return {
    id: asked.id,
    kind: asked.kind as AmendmentKind,
    reason: asked.reason,
    askedBy: names.get(asked.askedById) ?? "",
    askedAt: asked.askedAt.toISOString(),
    corrections: correctedFields(corrections).map((name) => ({
      label: correctionLabels[name],
      now: saidNow(content)[name],
      text: said[name] || textOf(corrections[name]),
    })),
    ...signable,
    /** Whether what is added seems to speak of a recalibration interval. */
    speaksOfInterval: speaksOfInterval(corrections.remark ?? ""),
    reading: asked.kind === "replacement" ? await readingOf(tx, actor, certificate) : null,
    draft: `/api/amendments/${asked.id}/draft`,
    signing: !isSignatory
      ? ("not-permitted" as const)
      : asked.askedById === personId
        ? ("own" as const)
        : performerIds.includes(personId)
          ? ("performer" as const)
          : ("open" as const),
    mayDrop: actor.kind === "staff" && may(actor.roles, "certificate.amend"),
  };
};
