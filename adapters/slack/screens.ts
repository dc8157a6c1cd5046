import type { App, webApi } from '@slack/bolt';
import type { Said, TicketForm } from '../../src/ports/chat.ts';
import type { LogLine } from '../../src/ports/log.ts';
import { reasonOf } from './failure.ts';
import { publishHome } from './home.ts';
import { roomOf } from './ids.ts';
import { asksForTicketForm, openTicketForm, OPENS_TICKET_FORM } from './modal.ts';

/**
 * Acknowledges what Bolt leaves to the listeners (presses, commands, forms), and shows forms and the App Home. What people
 * said with these is already in the database.
 */
export const screens = (
  app: App,
  web: webApi.WebClient,
  form: TicketForm,
  homeFor: (user: string) => Promise<Said>,
  log: LogLine,
): void => {
  const openForm = async (triggerId: string, channel: string | null): Promise<void> => {
    await openTicketForm(web, form, triggerId, channel).catch((error: unknown) => {
      log('warn', `The ticket form could not be shown: ${reasonOf(error)}. The ticket can be typed instead.`);
    });
  };

  const showHome = async (user: string): Promise<void> => {
    await publishHome(web, user, await homeFor(user), form);
  };

  app.action(OPENS_TICKET_FORM, async ({ ack, body }) => {
    await ack();
    if (body.type !== 'block_actions') return;
    await openForm(body.trigger_id, body.channel === undefined ? null : roomOf(body.channel.id));
  });
  app.action(/^say-/, async ({ ack, body }) => {
    await ack();
    // Pressed on the Home tab, which shows the old state until it is published again.
    if (body.type === 'block_actions' && body.view?.type === 'home') await showHome(body.user.id);
  });
  // Any name: the workspace may have renamed the command.
  app.command(/./, async ({ ack, command }) => {
    await ack();
    if (asksForTicketForm(form, command.text)) await openForm(command.trigger_id, null);
  });
  app.view(/./, async ({ ack }) => {
    await ack();
  });
  app.event('app_home_opened', async ({ event }) => {
    // The Messages tab sends the same event.
    if (event.tab === 'home') await showHome(event.user);
  });
};
