import { wireOrderView } from "@/lib/views/machine/wire-orders";
import { jsonResponse, notHereProblem, programRoute } from "@/lib/web/program-route";
import type { NumberContext } from "../../after";

export const GET = programRoute("orders:read", async (program, _request, { params }: NumberContext) => {
  const order = await wireOrderView(program, (await params).number);
  return order ? jsonResponse(order) : notHereProblem();
});
