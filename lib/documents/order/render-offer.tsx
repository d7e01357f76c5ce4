import type { OfferContent } from "@/lib/domain/quotation/content";
import { renderAlone } from "../render-alone";
import { OfferDocument } from "./offer-document";

/** Content in, PDF bytes out: the same bytes each time, on each machine. */
export const renderOffer = (content: OfferContent): Promise<Uint8Array> =>
  renderAlone(<OfferDocument content={content} />);
