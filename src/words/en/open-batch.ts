export const openBatch = { title: 'Open a batch' };
