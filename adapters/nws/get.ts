import { limitedText } from './limited-text.ts';
import { broken, failureOf, unusable, waitAsked } from './failure.ts';
import type { NwsFailure } from './failure.ts';

export interface NwsSettings {
  /** https://api.weather.gov, or a loopback server. */
  baseUrl: string;
  /** E-mail or web address of the operator: the service requires it in the User-Agent. */
  contact: string;
  /** For each request, including its body. */
  timeoutMs: number;
}

/** The settings, and the signal that aborts all requests when the source is closed. */
export interface NwsAccess extends NwsSettings {
  closing: AbortSignal;
}

/** Returned as received, never compared: dates in the future were seen (https://github.com/weather-gov/api/issues/108). */
export interface Validators {
  lastModified: string | null;
  etag: string | null;
}

type NwsReply = { got: 'json'; body: unknown; validators: Validators } | { got: 'unchanged' } | NwsFailure;

const MOST_REDIRECTS = 3;

/** Addresses in replies have the public host; requests stay on the host of the settings. */
export const onBase = (baseUrl: string, address: string): URL => {
  const base = new URL(baseUrl);
  const { pathname, search } = new URL(address, base);
  return new URL(pathname + search, base);
};

const headersOf = (settings: NwsAccess, accept: string, known: Validators | null): Headers => {
  const headers = new Headers({ 'User-Agent': `Fieldbell (${settings.contact})`, Accept: accept });
  if (known?.lastModified) headers.set('If-Modified-Since', known.lastModified);
  if (known?.etag) headers.set('If-None-Match', known.etag);
  return headers;
};

/** By hand, because redirects have only a path (https://github.com/weather-gov/api/issues/18) or the public host. */
const follow = async (settings: NwsAccess, start: URL, headers: Headers): Promise<Response> => {
  const signal = AbortSignal.any([AbortSignal.timeout(settings.timeoutMs), settings.closing]);
  let url = start;
  for (let turn = 0; ; turn += 1) {
    const response = await fetch(url, { headers, signal, redirect: 'manual' });
    const location = response.headers.get('location');
    if (response.status < 300 || response.status >= 400 || location === null) return response;
    if (turn === MOST_REDIRECTS) return response;
    await response.body?.cancel();
    url = onBase(settings.baseUrl, new URL(location, url).href);
  }
};

const read = async (response: Response): Promise<NwsReply> => {
  if (response.status === 304) return { got: 'unchanged' };
  const { headers, status } = response;
  const text = await limitedText(response);
  if (text === null) return unusable('the answer is longer than 5 MB');
  if (status !== 200) return failureOf(status, text, waitAsked(headers));
  // If the content network blocks us, it sends a web page, sometimes with status 200.
  if (!headers.get('content-type')?.includes('json')) return unusable('the answer is a web page, not JSON');
  try {
    const validators = { lastModified: headers.get('last-modified'), etag: headers.get('etag') };
    return { got: 'json', body: JSON.parse(text), validators };
  } catch {
    return unusable('the answer is truncated');
  }
};

/** One request. Never throws. Without cache-busting: an unknown query parameter is refused with 400. */
export const getJson = async (
  settings: NwsAccess,
  url: URL,
  { accept = 'application/geo+json', known = null }: { accept?: string; known?: Validators | null } = {},
): Promise<NwsReply> => {
  try {
    return await read(await follow(settings, url, headersOf(settings, accept, known)));
  } catch (error) {
    return broken(error, settings.timeoutMs);
  }
};
