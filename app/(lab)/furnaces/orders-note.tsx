import { configurationKindLabels } from "@/lib/domain/furnace/labels";
import { ordersOfMagnitude } from "@/lib/domain/furnace/survey-kinds";
import type { ConfigurationKind } from "@/lib/domain/furnace/types";

/** To compare with, never for a budget. */
export function OrdersNote({ kind }: { readonly kind: ConfigurationKind }) {
  const { axialCelsius, positionsCelsius } = ordersOfMagnitude[kind];
  return (
    <p className="quiet">
      For comparison, {configurationKindLabels[kind].toLowerCase()} of a good furnace: axial {axialCelsius}{" "}
      °C, positions {positionsCelsius} °C, immersion about {ordersOfMagnitude.immersionMillimetre} mm. Common
      practice, no source; over which length, at which temperature and whether half or full range is not
      known.
    </p>
  );
}
