import type { WireMessage } from '../contract.ts';
import { isWebAddress, ownFile } from './addresses.ts';
import { make } from './dom.ts';
import { linkTo } from './markup.ts';
import { fieldsOf, numberOf, textOf } from './wire.ts';

const PICTURE = /\.(?:png|jpe?g|webp|gif|avif)$/iu;

/** A picture kept by the channel; one kept elsewhere is only linked to. Pressing it opens it whole. */
export function picture(
  address: string,
  words: string,
  size?: { width: number; height: number },
): HTMLElement {
  const path = ownFile(address);
  if (path === undefined) return elsewhere(address, 'Picture');
  const alt = words === '' ? 'Picture without a description' : words;
  const image = make('img', { src: path, alt, loading: 'lazy', decoding: 'async' });
  if (size !== undefined) [image.width, image.height] = [size.width, size.height];
  return make('a', { class: 'picture', href: path, target: '_blank', rel: 'noopener' }, image);
}

/** A file to open or keep. */
export function fileLink(address: string, name: string): HTMLElement {
  const path = ownFile(address);
  if (path === undefined) return elsewhere(address, 'File');
  const words = name === '' ? decodeURIComponent(path.split('/').at(-1) ?? 'file') : name;
  const attributes = { class: 'press file', href: path, target: '_blank', rel: 'noopener' };
  return make('a', attributes, 'File: ', make('bdi', {}, words));
}

function elsewhere(address: string, what: string): HTMLElement {
  if (!isWebAddress(address)) return make('p', { class: 'small' }, `${what} that is not there.`);
  return make('p', {}, linkTo(address, new Text(`${what} at ${new URL(address).host}`)));
}

/** Everything sent along with a message: pictures as pictures, the rest as files. */
export function attachments(message: WireMessage): readonly Node[] {
  return message.attachments.map((attachment) => {
    const more = fieldsOf(attachment);
    if (!PICTURE.test(attachment.filename)) return fileLink(attachment.url, attachment.filename);
    const [width, height] = [numberOf(more['width']), numberOf(more['height'])];
    const size = width === undefined || height === undefined ? undefined : { width, height };
    return picture(attachment.url, textOf(more['description']) || attachment.filename, size);
  });
}
