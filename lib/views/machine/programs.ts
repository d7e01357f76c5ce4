import type { Tx } from "@/lib/data/in-scope";
import { inSnapshot } from "@/lib/data/in-scope";
import { loadTokens } from "@/lib/data/machine/token-store";
import { loadLastAttempts, loadWebhooks } from "@/lib/data/machine/webhook-store";
import { tokenScopeLabels } from "@/lib/domain/machine/scopes";
import { webhookTopicLabels } from "@/lib/domain/machine/topics";
import { Refused } from "@/lib/domain/refusal";
import type { Actor } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";
import { answer } from "../view";

const tokensOf = async (tx: Tx, customerId: string | null, now: Date) =>
  (await loadTokens(tx, customerId)).map((token) => ({
    id: token.id,
    name: token.name,
    beginning: token.beginning,
    opens: token.scopes.map((scope) => tokenScopeLabels[scope]),
    madeAt: token.madeAt.toISOString(),
    expiresAt: token.expiresAt.toISOString(),
    lastUsedAt: token.lastUsedAt?.toISOString() ?? null,
    state: token.revokedAt
      ? ("revoked" as const)
      : token.expiresAt <= now
        ? ("expired" as const)
        : ("in-force" as const),
  }));

const labelOf = (topic: string): string =>
  Object.hasOwn(webhookTopicLabels, topic)
    ? webhookTopicLabels[topic as keyof typeof webhookTopicLabels]
    : topic;

const webhooksOf = async (tx: Tx, customerId: string) => {
  const webhooks = await loadWebhooks(tx, customerId);
  return Promise.all(
    webhooks.map(async ({ id, url, topics, madeAt }) => ({
      id,
      url,
      hears: topics.map(labelOf),
      madeAt: madeAt.toISOString(),
      attempts: (await loadLastAttempts(tx, id, 3)).map(({ outcome, detail, happenedAt, message }) => ({
        outcome,
        detail,
        at: happenedAt.toISOString(),
        about: labelOf(message.topic),
      })),
    })),
  );
};

/**
 * The programs of the actor's own customer. Tokens and secrets are no customer's to read, not even by hash: this asks
 * in the laboratory's scope, for the actor's customer alone.
 */
export const customerProgramsView = (actor: Actor, now: Date) => {
  if (actor.kind !== "customer" || !may(actor.roles, "portal.manage"))
    throw new Refused({ code: "not-permitted", message: "Your roles do not allow this page." });
  return inSnapshot({ kind: "laboratory" }, async (tx) => ({
    tokens: await tokensOf(tx, actor.customerId, now),
    webhooks: await webhooksOf(tx, actor.customerId),
  }));
};

/** The programs of the laboratory itself. */
export const laboratoryProgramsView = (actor: Actor, now: Date) =>
  answer(actor, "laboratory.configure", async (tx) => ({ tokens: await tokensOf(tx, null, now) }));

export type ProgramToken = Awaited<ReturnType<typeof laboratoryProgramsView>>["tokens"][number];
export type ProgramWebhook = Awaited<ReturnType<typeof customerProgramsView>>["webhooks"][number];
