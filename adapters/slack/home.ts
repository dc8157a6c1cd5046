import type { webApi } from '@slack/bolt';
import type { Said, TicketForm } from '../../src/ports/chat.ts';
import { rendered } from './render.ts';

/** Shows `said` on the person's App Home (https://docs.slack.dev/surfaces/app-home/). */
export const publishHome = async (
  web: webApi.WebClient,
  user: string,
  said: Said,
  form: TicketForm,
): Promise<void> => {
  await web.views.publish({
    user_id: user,
    view: { type: 'home', blocks: rendered(said, false, form).blocks },
  });
};
