import { BUILD } from '../../../../src/app/build.ts';

export const part = () => `a part of ${BUILD}`;
