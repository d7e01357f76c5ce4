import { loadProvider, loadProviders } from "@/lib/data/provider/provider-store";
import type { Provider } from "@/lib/domain/provider/types";
import type { Actor } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";
import { answer, found } from "./view";

const mayRecord = (actor: Actor): boolean => actor.kind !== "system" && may(actor.roles, "provider.record");

/** Who calibrates for the laboratory, and whether each may. */
export const providersView = (
  actor: Actor,
): Promise<{ readonly providers: readonly Provider[]; readonly mayRecord: boolean }> =>
  answer(actor, "laboratory.read", async (tx) => ({
    providers: await loadProviders(tx),
    mayRecord: mayRecord(actor),
  }));

/** One provider with the certificates it issued for our equipment, newest first. */
export const providerView = (actor: Actor, id: string) =>
  answer(actor, "laboratory.read", async (tx) => {
    const provider = found(await loadProvider(tx, id));
    const certificates = await tx.calibration.findMany({
      where: { OR: [{ providerId: provider.id }, { providerId: null, issuer: provider.name }] },
      orderBy: [{ performedOn: "desc" }, { recordedAt: "desc" }],
      select: {
        id: true,
        certificate: true,
        performedOn: true,
        equipment: { select: { id: true, tag: true } },
      },
      take: 200,
    });
    return { provider, certificates, mayRecord: mayRecord(actor) };
  });
