export const formulaEdit = { title: 'Edit' };
