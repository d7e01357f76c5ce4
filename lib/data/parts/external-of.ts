import type { ExternalFacts } from "@/lib/domain/parts/external-parts";
import { awayOf } from "../custody/away-of";
import type { Tx } from "../in-scope";
import { loadReports } from "../provider/report-store";
import { providersOf } from "./providers-of";

type Line = { readonly providerId: string | null; readonly sensors: readonly { readonly id: string }[] };

/** Of the sensors whose lines are subcontracted: to whom, and how far the provider's certificate is. */
export const externalOf = async (
  tx: Tx,
  lines: readonly Line[],
): Promise<ReadonlyMap<string, ExternalFacts>> => {
  const gone = lines.filter(({ providerId }) => providerId !== null);
  const providers = await providersOf(
    tx,
    gone.map((line) => ({ line })),
  );
  const ids = gone.flatMap(({ sensors }) => sensors.map(({ id }) => id));
  const reports = ids.length === 0 ? [] : await loadReports(tx, ids);
  const away = await awayOf(tx, ids);
  return new Map(
    gone.flatMap(({ providerId, sensors }) =>
      sensors.map(({ id }): [string, ExternalFacts] => {
        const own = reports.filter(({ sensorId }) => sensorId === id);
        const last = own.at(-1);
        const counted = own.findLast(({ standing }) => standing === "accepted");
        return [
          id,
          {
            provider: providers.get(providerId ?? "") ?? "",
            isWaitingForSecond: own.some(({ standing }) => standing === null),
            isAway: away.has(id),
            rejected:
              last?.standing === "rejected"
                ? { certificate: last.certificate, reason: last.decided?.reason ?? "" }
                : null,
            report: counted
              ? {
                  certificate: counted.certificate,
                  celsius: counted.results.points.map(({ orderedCelsius }) => orderedCelsius),
                }
              : null,
          },
        ];
      }),
    ),
  );
};
