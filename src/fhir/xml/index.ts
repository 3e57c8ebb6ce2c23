export { fromXml } from './from-xml.ts';
export { toXml } from './to-xml.ts';
