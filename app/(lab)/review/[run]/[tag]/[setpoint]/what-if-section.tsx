import { Disclosure } from "@/app/_ui/disclosure";
import { Section } from "@/app/_ui/section";
import type { ReviewResultPage } from "@/lib/views/review-result";
import { WhatIfTable } from "./what-if.client";

/** Other uncertainties tried on this result. Shut at first: it is a question, not part of the record. */
export function WhatIfSection({ result }: { readonly result: ReviewResultPage }) {
  const { point, agreed } = result;
  if (point.state !== "measured") return null;
  return (
    <Section
      title="What if"
      note="What U would be with a better standard, meter or furnace. Computed in the browser; nothing is stored."
      wide
    >
      <Disclosure summary="Try other uncertainties">
        <WhatIfTable point={point} rule={agreed.rule} digits={agreed.digits} />
      </Disclosure>
    </Section>
  );
}
