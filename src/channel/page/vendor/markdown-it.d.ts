/** The channel serves markdown-it's browser build at this place beside the page; here stand only its types. */
export { default } from 'markdown-it';
