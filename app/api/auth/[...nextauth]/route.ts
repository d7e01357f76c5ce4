import type { NextRequest } from "next/server";
import NextAuth from "next-auth";
import { authOptions } from "@/lib/web/auth-options";
import { env } from "@/lib/web/env";
import { isOwnOrigin } from "@/lib/web/origin";

type Context = { readonly params: Promise<{ readonly nextauth: string[] }> };

// Made per request: a build has no environment.
const answer = (request: NextRequest, context: Context): Promise<Response> =>
  NextAuth(authOptions())(request, context);

export const GET = answer;

export const POST = async (request: NextRequest, context: Context): Promise<Response> =>
  isOwnOrigin(request.headers.get("origin"), env().publicOrigin)
    ? answer(request, context)
    : new Response(`Sign in at ${env().publicOrigin}, the laboratory's own address.`, { status: 403 });
