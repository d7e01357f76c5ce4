import { Notice } from "@/app/_ui/notice";

/** Where a probe is moved in a hot tube: said before the first stop, not after. */
export function SurveyCaution({ celsius }: { readonly celsius: number }) {
  return (
    <Notice kind="danger" title={`Danger: a tube at ${celsius} °C`}>
      What is drawn out of it burns skin at once, and below red heat it does not look hot: face shield,
      heat-proof gloves and a rest for the probe, and nobody alone at the furnace. Move the probe slowly: a
      ceramic tube or sheath that is quenched cracks, and quenched platinum is spoilt. Old ceramic fibre gives
      dust that must not be breathed. The furnace is earthed and its hardware over-temperature cutout set;
      this page stands in for neither. Local rules and the makers’ manuals go before anything written here.
    </Notice>
  );
}
