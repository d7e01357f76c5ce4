import { renderToBuffer } from "@react-pdf/renderer";
import type { OfferContent } from "@/lib/domain/quotation/content";
import { OfferDocument } from "./offer-document";

/** Content in, PDF bytes out: the same bytes each time, on each machine. */
export const renderOffer = async (content: OfferContent): Promise<Uint8Array> =>
  Uint8Array.from(await renderToBuffer(<OfferDocument content={content} />));
