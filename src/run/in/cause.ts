/** What brought facts and messages about, as text: that of a message is its platform and the platform's id of it. */
export const causeOf = ({ platform, id }: { platform: string; id: string }): string => `${platform}:${id}`;

/** The message of a cause; null = not a message's. Ids may hold colons, platforms hold none. */
export const messageOf = (cause: string): { platform: string; id: string } | null => {
  const at = cause.indexOf(':');
  return at < 0 ? null : { platform: cause.slice(0, at), id: cause.slice(at + 1) };
};
