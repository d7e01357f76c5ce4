import { Notice } from "@/app/_ui/notice";

/** Stands on every furnace page: a figure on a screen has never kept anything from burning. */
export function HotWorkNotice() {
  return (
    <Notice kind="caution" title="Hot work">
      At 1200 °C a furnace and what comes out of it burn skin at once and set things alight, long after the
      glow is gone. Over-temperature protection must be a hardware cutout of its own; software, this one
      included, is never one. Local codes and the practice of licensed trades hold whatever a page here says.
    </Notice>
  );
}
