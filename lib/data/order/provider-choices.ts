import { isoDay } from "@/lib/domain/calibration/due";
import { isApprovedOn, type ProviderChoice } from "@/lib/domain/order/subcontracting";
import type { Tx } from "../in-scope";
import { loadProviders } from "../provider/provider-store";

/** To whom a line could go, by name, and whether that is allowed today. */
export const providerChoices = async (tx: Tx, now: Date): Promise<readonly ProviderChoice[]> =>
  (await loadProviders(tx)).map((provider) => ({
    id: provider.id,
    name: provider.name,
    isApproved: isApprovedOn(provider, isoDay(now)),
  }));
