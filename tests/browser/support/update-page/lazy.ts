import { BUILD } from '#store/build.ts';

export const part = () => `a part of ${BUILD}`;
