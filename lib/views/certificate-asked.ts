import { loadOpenAmendment } from "@/lib/data/amendment/amendment-store";
import { loadAmended } from "@/lib/data/amendment/load-amended";
import type { CertificateRow } from "@/lib/data/amendment/load-measured";
import { hex } from "@/lib/data/hex";
import type { Tx } from "@/lib/data/in-scope";
import { loadPeopleNames } from "@/lib/data/review/load-people-names";
import { sha256 } from "@/lib/data/sha256";
import {
  type AmendmentKind,
  type Corrections,
  correctedFields,
  correctionLabels,
  readCorrections,
} from "@/lib/domain/amendment/amendment";
import { contentHash } from "@/lib/domain/certificate/content-hash";
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
    };
  const { performerIds } = amended.value;
  return { reviewedHash: hex(contentHash(content.value, sha256)), performerIds, obstacle: "" };
};

/** What is asked for and not decided, as whoever looks at it may decide; null: nothing. */
export const askedOf = async (tx: Tx, actor: Actor, certificate: CertificateRow) => {
  const asked = await loadOpenAmendment(tx, certificate.id);
  if (!asked) return null;
  const corrections = readCorrections(asked.corrections);
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
      text: textOf(corrections[name]),
    })),
    ...signable,
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
