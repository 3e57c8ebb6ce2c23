import type { OneSide } from '../sides.ts';

// Names under which marks are filed. No code of a table holds a bar or a space.

export function regionPlace(region: string, side: OneSide | undefined): string {
  return `region|${region}|${side ?? ''}`;
}

export function methodPlace(region: string, side: OneSide | undefined, method: string): string {
  return `method|${region}|${side ?? ''}|${method}`;
}

export function pointPlace(point: string, side: OneSide | undefined, modality: string): string {
  return `point|${point}|${side ?? ''}|${modality}`;
}

export function testPlace(test: string, side: OneSide | undefined): string {
  return `test|${test}|${side ?? ''}`;
}

export function measurePlace(measure: string, side: OneSide | undefined): string {
  return `measure|${measure}|${side ?? ''}`;
}
