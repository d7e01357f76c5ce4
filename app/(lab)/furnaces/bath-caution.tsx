import { Notice } from "@/app/_ui/notice";

/** Where a thermocouple is moved through a hot bath or out of a furnace: said before the first depth. */
export function BathCaution() {
  return (
    <Notice kind="danger" title="Danger: hot baths and hot ends">
      Anything wet that goes into molten salt throws it out violently, and organic matter in a nitrate bath
      can set it on fire: only dry, clean, warm sheaths go in, slowly, with face shield, gloves and covered
      arms. Oil above its flash point burns. What is drawn out stays hot and does not look it. Nobody works at
      a bath alone; its own hardware cutout is set. Local rules and the makers’ manuals go before anything
      written here.
    </Notice>
  );
}
