import { lookup } from "node:dns";
import { request as plainRequest } from "node:http";
import { request as safeRequest } from "node:https";
import type { LookupFunction } from "node:net";
import type { Courier } from "@/lib/operations/machine/deliver-webhook";
import { isOwnNetwork } from "./own-network";

const patience = 10_000;

/**
 * The name is looked up once and the connection made to what was found: looked up twice, the second answer could lead
 * into our own network after the first had not.
 */
const guardedLookup: LookupFunction = (name, options, answer) =>
  lookup(name, { ...options, all: true }, (error, found) => {
    if (error) return answer(error, "", 0);
    const barred = found.find(({ address }) => isOwnNetwork(address));
    if (barred || !found[0])
      return answer(new Error(`${name} leads to an address that is not on the internet`), "", 0);
    return options.all ? answer(null, found) : answer(null, found[0].address, found[0].family);
  });

/** Posts a message. Taken is an answer of 2xx; a redirection is not followed. */
export const httpCourier =
  (mayTellOwnNetwork: boolean): Courier =>
  (url, headers, body) =>
    new Promise((resolve, reject) => {
      const to = new URL(url);
      const host = to.hostname.replace(/^\[|\]$/g, "");
      if (!mayTellOwnNetwork && /^[\d.]+$|:/.test(host) && isOwnNetwork(host))
        return reject(new Error(`${host} is not on the internet`));
      const send = to.protocol === "https:" ? safeRequest : plainRequest;
      const options = {
        method: "POST",
        headers: {
          ...headers,
          "content-type": "application/json",
          "content-length": Buffer.byteLength(body),
        },
        signal: AbortSignal.timeout(patience),
        ...(mayTellOwnNetwork ? {} : { lookup: guardedLookup }),
      };
      const request = send(to, options, (response) => {
        response.destroy();
        const status = response.statusCode ?? 0;
        if (status >= 200 && status < 300) resolve(`answered ${status}`);
        else reject(new Error(`answered ${status}`));
      });
      request.on("error", reject);
      request.end(body);
    });
