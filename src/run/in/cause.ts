/** The cause of what a message brings about: its platform and the platform's id of it. */
export const causeOf = ({ platform, id }: { platform: string; id: string }): string => `${platform}:${id}`;
