import { randomBytes } from 'node:crypto';
import type { OpenForm, Outcome } from '../contract.ts';
import { LIMITS } from '../rules/limits.ts';
import { refuse } from '../wire/api-error.ts';
import { compact, type JsonObject } from '../wire/json.ts';
import { type Kind, Permission } from '../wire/numbers.ts';
import { Emitter } from './emitter.ts';
import { messagePayload } from './message-payload.ts';
import { channelPayload, memberPayload, userPayload } from './payloads.ts';
import type { Channel, Message, Person } from './things.ts';
import type { World } from './world.ts';

const { interaction: MAX } = LIMITS;

/** Forms that can still be submitted; the eldest go first. */
const FORMS_KEPT = 500;

/** What a person did, before the bot was told. */
export interface Deed {
  readonly kind: (typeof Kind)[keyof typeof Kind];
  readonly person: Person;
  readonly channel: Channel;
  readonly data: JsonObject;
  /** The message whose button was pressed, or whose form was filled in. */
  readonly source?: Message | undefined;
  /** Done through the app on the person's own account: the bot has no part in the place. */
  readonly ownApp?: boolean;
  /** The command as typed. */
  readonly name?: string;
  readonly line?: string;
}

/** One interaction from the deed to the end of its token. */
export interface Interaction {
  readonly id: string;
  readonly token: string;
  readonly deed: Deed;
  readonly startedMs: number;
  /** The callback type of the first answer. */
  answeredWith?: number;
  /** Message that `@original` stands for. */
  originalId?: string;
  /** Resolves once, with what the person sees come of it. */
  readonly outcome: Promise<Outcome>;
  settle(outcome: Outcome): void;
  /** Answer to an autocomplete. */
  readonly choices: Promise<readonly JsonObject[]>;
  suggest(choices: readonly JsonObject[]): void;
}

/** A form a bot opened, and what it was opened from. */
interface Opened {
  readonly form: OpenForm;
  readonly deed: Deed;
}

/** The interactions under way: their tokens, their three seconds, their fifteen minutes. */
export class Interactions {
  readonly #world: World;
  readonly #uploadLimit: number;
  readonly #byToken = new Map<string, Interaction>();
  readonly #forms = new Map<string, Opened>();
  readonly #cancels = new Set<() => void>();
  /** Told of each interaction whose token has ended. */
  readonly expired = new Emitter<Interaction>();
  /** How often each is delivered; more than once only as a fault. */
  deliveries = 1;

  constructor(world: World, uploadLimitBytes: number) {
    this.#world = world;
    this.#uploadLimit = uploadLimitBytes;
  }

  start(deed: Deed): Interaction {
    const { promise: outcome, resolve: settle } = Promise.withResolvers<Outcome>();
    const { promise: choices, resolve: suggest } = Promise.withResolvers<readonly JsonObject[]>();
    const interaction: Interaction = {
      id: this.#world.newId(),
      token: randomBytes(48).toString('base64url'),
      deed,
      startedMs: this.#world.clock.nowMs(),
      outcome,
      settle,
      choices,
      suggest,
    };
    this.#byToken.set(interaction.token, interaction);
    this.#later(MAX.firstAnswerMs, () => {
      if (interaction.answeredWith !== undefined) return;
      settle({ kind: 'unanswered', interactionId: interaction.id });
      suggest([]);
    });
    this.#later(MAX.tokenMs, () => {
      this.#byToken.delete(interaction.token);
      settle({ kind: 'unanswered', interactionId: interaction.id });
      this.expired.tell(interaction);
    });
    const data = this.#payload(interaction);
    for (let time = 0; time < this.deliveries; time += 1) {
      this.#world.gateway.tell({ name: 'INTERACTION_CREATE', intents: 0, data });
    }
    return interaction;
  }

  /** Settles an interaction as acknowledged without an answer, unless one comes within `ms`. */
  quietAfter(interaction: Interaction, ms: number): void {
    this.#later(ms, () => interaction.settle({ kind: 'quiet', interactionId: interaction.id }));
  }

  /**
   * The interaction a callback is for.
   * @throws ApiError 10062 for a wrong id or token or after three seconds, 40060 when it was answered before.
   */
  toAnswer(id: string, token: string): Interaction {
    const interaction = this.#byToken.get(token);
    if (interaction === undefined || interaction.id !== id) throw refuse.unknownInteraction();
    if (interaction.answeredWith !== undefined) throw refuse.alreadyAcknowledged();
    if (this.#world.clock.nowMs() - interaction.startedMs > MAX.firstAnswerMs)
      throw refuse.unknownInteraction();
    return interaction;
  }

  /**
   * The interaction an edit or a follow-up is for.
   * @throws ApiError 50027 after fifteen minutes, 10015 before the first answer.
   */
  toFollow(token: string): Interaction {
    const interaction = this.#byToken.get(token);
    const age =
      interaction === undefined
        ? Number.POSITIVE_INFINITY
        : this.#world.clock.nowMs() - interaction.startedMs;
    if (interaction === undefined || age > MAX.tokenMs) throw refuse.expiredToken();
    if (interaction.answeredWith === undefined) throw refuse.unknownWebhook();
    return interaction;
  }

  open(interaction: Interaction, form: OpenForm): void {
    this.#forms.set(form.interactionId, { form, deed: interaction.deed });
    const [eldest] = this.#forms.keys();
    if (this.#forms.size > FORMS_KEPT && eldest !== undefined) this.#forms.delete(eldest);
    this.#world.news.tell({ kind: 'form', personId: interaction.deed.person.id, form });
  }

  /** The form that this person has open under this id. */
  opened(interactionId: string, personId: string): Opened | undefined {
    const opened = this.#forms.get(interactionId);
    return opened?.deed.person.id === personId ? opened : undefined;
  }

  close(): void {
    for (const cancel of this.#cancels) cancel();
    this.#cancels.clear();
    for (const interaction of this.#byToken.values()) {
      interaction.settle({ kind: 'unanswered', interactionId: interaction.id });
      interaction.suggest([]);
    }
    this.#byToken.clear();
  }

  #later(ms: number, task: () => void): void {
    const cancel = this.#world.clock.after(ms, () => {
      this.#cancels.delete(cancel);
      task();
    });
    this.#cancels.add(cancel);
  }

  #payload(interaction: Interaction): JsonObject {
    const world = this.#world;
    const { deed } = interaction;
    const direct = world.isDirect(deed.channel);
    const place = direct
      ? { user: userPayload(deed.person), context: 1, authorizing_integration_owners: { '0': '0' } }
      : {
          guild_id: world.guildId,
          guild: { id: world.guildId, locale: 'en-GB', features: [] },
          guild_locale: 'en-GB',
          member: {
            ...memberPayload(deed.person),
            permissions: world.permissionsOf(deed.person).toString(),
          },
          context: 0,
          authorizing_integration_owners:
            deed.ownApp === true ? { '1': deed.person.id } : { '0': world.guildId },
        };
    return compact({
      id: interaction.id,
      application_id: world.applicationId,
      type: deed.kind,
      token: interaction.token,
      version: 1,
      data: deed.data,
      channel: channelPayload(world, deed.channel),
      channel_id: deed.channel.id,
      message: deed.source === undefined ? undefined : messagePayload(world, deed.source),
      locale: 'en-GB',
      app_permissions: (direct ? Permission.sendMessages : world.permissionsOf(world.bot)).toString(),
      entitlements: [],
      attachment_size_limit: this.#uploadLimit,
      ...place,
    });
  }
}
