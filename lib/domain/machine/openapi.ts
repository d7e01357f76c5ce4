import { z } from "zod";
import { requestsPerMinute, tokenScopeLabels } from "./scopes";
import { WireCertificate, WireCertificatePage, WireCertificateSummary } from "./wire/certificate";
import { WireOrder, WireOrderLine, WireOrderPage, WireOrderSummary, WireSensor } from "./wire/order";
import { Problem } from "./wire/problem";
import { WebhookBody } from "./wire/webhook-body";
import { WorkRequest, WorkRequested } from "./wire/work-request";

type Json = { readonly [key: string]: unknown };

const place = (id: string): string => `#/components/schemas/${id}`;

/** The schemas that check what comes in and goes out, as JSON Schema; one refers to another by its name. */
const schemasOf = (io: "input" | "output", named: Readonly<Record<string, z.ZodType>>): Json => {
  const registry = z.registry<{ id: string }>();
  for (const [id, schema] of Object.entries(named)) registry.add(schema, { id });
  const { schemas } = z.toJSONSchema(registry, { io, uri: place, target: "draft-2020-12" });
  return Object.fromEntries(
    Object.entries(schemas).map(([id, { $id: _, $schema: __, ...schema }]) => [id, schema]),
  );
};

const json = (id: string, description: string): Json => ({
  description,
  content: { "application/json": { schema: { $ref: place(id) } } },
});

const problem = (description: string, headers?: Json): Json => ({
  description,
  ...(headers ? { headers } : {}),
  content: { "application/problem+json": { schema: { $ref: place("Problem") } } },
});

const retryAfter = { "Retry-After": { description: "Seconds to wait.", schema: { type: "integer" } } };

const refusals = {
  "401": problem("No token, or one that is unknown, revoked or past its date."),
  "403": problem("The token does not open this."),
  "429": problem("Too many requests; go on when the window is over.", retryAfter),
};

const notFound = { "404": problem("Not here, or another customer's: the two look the same.") };

const number: Json = { name: "number", in: "path", required: true, schema: { type: "string" } };
const after: Json = {
  name: "after",
  in: "query",
  required: false,
  description: "`next` of the page before.",
  schema: { type: "string" },
};

const paths = {
  "/orders": {
    get: {
      operationId: "listOrders",
      summary: "Orders, the newest first, 50 a page",
      security: [{ token: ["orders:read"] }],
      parameters: [after],
      responses: { "200": json("OrderPage", "A page of orders."), ...refusals },
    },
    post: {
      operationId: "requestWork",
      summary: "Request work",
      description:
        "The laboratory reviews the request before anything is agreed. Sent again with the same Idempotency-Key, it is one request.",
      security: [{ token: ["orders:write"] }],
      parameters: [
        {
          name: "Idempotency-Key",
          in: "header",
          required: true,
          schema: { type: "string", minLength: 8, maxLength: 100 },
        },
      ],
      requestBody: {
        required: true,
        content: { "application/json": { schema: { $ref: place("WorkRequest") } } },
      },
      responses: {
        "201": json("WorkRequested", "Requested."),
        "200": json("WorkRequested", "It was requested before, with this key."),
        "422": problem("The request does not hold; `fields` says where."),
        ...refusals,
      },
    },
  },
  "/orders/{number}": {
    get: {
      operationId: "readOrder",
      summary: "One order, with where each sensor is",
      security: [{ token: ["orders:read"] }],
      parameters: [number],
      responses: { "200": json("Order", "The order."), ...notFound, ...refusals },
    },
  },
  "/certificates": {
    get: {
      operationId: "listCertificates",
      summary: "Certificates, the newest first, 50 a page",
      security: [{ token: ["certificates:read"] }],
      parameters: [after],
      responses: { "200": json("CertificatePage", "A page of certificates."), ...refusals },
    },
  },
  "/certificates/{number}": {
    get: {
      operationId: "readCertificate",
      summary: "What a certificate says, as it was signed off",
      security: [{ token: ["certificates:read"] }],
      parameters: [number],
      responses: { "200": json("Certificate", "Content and content hash."), ...notFound, ...refusals },
    },
  },
  "/certificates/{number}/pdf": {
    get: {
      operationId: "downloadCertificate",
      summary: "The document",
      security: [{ token: ["certificates:read"] }],
      parameters: [number],
      responses: {
        "200": {
          description: "The stored bytes.",
          content: { "application/pdf": { schema: { type: "string", contentMediaType: "application/pdf" } } },
        },
        "503": problem("The document is still being made.", retryAfter),
        ...notFound,
        ...refusals,
      },
    },
  },
} as const;

/** OpenAPI 3.1 of the interface for programs, made from the schemas that the interface itself is held to. */
export const openApiDocument = (publicUrl: string, title: string): Json => ({
  openapi: "3.1.0",
  info: {
    title,
    version: "1",
    description: `Each request carries \`Authorization: Bearer TOKEN\`. A token may ask ${requestsPerMinute} times a minute.`,
  },
  servers: [{ url: `${publicUrl}/api/v1` }],
  paths,
  webhooks: {
    happened: {
      post: {
        operationId: "happened",
        summary:
          "Something happened; signed by Standard Webhooks 1.0 (webhook-id, webhook-timestamp, webhook-signature)",
        requestBody: { content: { "application/json": { schema: { $ref: place("WebhookBody") } } } },
        responses: { "2XX": { description: "Taken. Anything else is tried again." } },
      },
    },
  },
  components: {
    securitySchemes: {
      token: {
        type: "http",
        scheme: "bearer",
        description: Object.entries(tokenScopeLabels)
          .map(([scope, label]) => `${scope}: ${label}`)
          .join("; "),
      },
    },
    schemas: {
      ...schemasOf("output", {
        Problem,
        Sensor: WireSensor,
        OrderLine: WireOrderLine,
        OrderSummary: WireOrderSummary,
        Order: WireOrder,
        OrderPage: WireOrderPage,
        CertificateSummary: WireCertificateSummary,
        CertificatePage: WireCertificatePage,
        Certificate: WireCertificate,
        WorkRequested,
        WebhookBody,
      }),
      ...schemasOf("input", { WorkRequest }),
    },
  },
});
