import { expect, type Locator, type Page } from '@playwright/test';

export const HOUR_MS = 3_600_000;

export type Maker = ReturnType<typeof maker>;

/** A maker with a phone: what the thumb does, screen by screen. Nothing is reached but what is on the screen. */
export function maker(page: Page) {
  page.setDefaultTimeout(30_000);
  const button = (name: string | RegExp): Locator => page.getByRole('button', { name, exact: true });
  const press = (name: string | RegExp) => button(name).click();
  const follow = (name: string | RegExp) => page.getByRole('link', { name, exact: true }).click();
  /** A chip is its label; the radio inside is not to be hit. */
  const choose = (name: string | RegExp) =>
    page.getByRole('radio', { name, exact: true }).locator('..').click();
  const heading = (name: string) =>
    expect(page.getByRole('heading', { level: 1, name, exact: true })).toBeVisible();
  const sheet = page.getByRole('dialog');
  const shut = () => expect(sheet).toBeHidden();

  /** By the app's own keys: as many taps as signs. */
  async function keys(text: string): Promise<void> {
    const pad = page.getByRole('group', { name: 'Number keys' });
    for (const sign of text)
      await pad.getByRole('button', { name: sign === '.' ? 'decimal sign' : sign, exact: true }).click();
  }

  /** Saves what a sheet holds; a question about an unlikely value is answered with "Keep it" where the test says so. */
  async function save(name = 'Save', { keep = false } = {}): Promise<void> {
    await press(name);
    if (keep) await press('Keep it');
    await shut();
  }

  return {
    page,
    button,
    press,
    follow,
    heading,
    keys,
    choose,
    sheet,
    save,

    async go(hash: string): Promise<void> {
      await page.goto(`./#${hash}`);
      // A page that forecasts a full rail takes a while on a busy machine.
      await expect(page.getByRole('heading', { level: 1 })).toBeVisible({ timeout: 30_000 });
    },

    /** A book made elsewhere, taken in as another phone's backup is. */
    async takeIn(text: string): Promise<void> {
      await this.go('/kit/keeping');
      const file = { name: 'book.txt', mimeType: 'text/plain', buffer: Buffer.from(text) };
      await page.getByLabel('Choose a file').setInputFiles(file);
      await press(/^Take in /);
      await expect(page.getByText('taken in and saved on this phone')).toBeVisible();
    },

    /** The id of the batch whose page is open, as it stands in the address. */
    batchId: (): string => /#\/batches\/([^/]+)/.exec(page.url())?.[1] ?? '',

    async setUpBench(rules: 'Canada' | 'United States' | 'European Union', paper: 'A4' | 'Letter' = 'A4') {
      await follow('Set up the bench');
      await heading('Set up the bench');
      await choose(/^Grams/);
      await choose(rules === 'United States' ? '°F' : '°C');
      await choose(new RegExp(`^${rules}`));
      await choose(paper);
      await page.getByLabel('Initials').fill('HK');
      await press('Save, then the scale');
      await heading('Scales and meters');
    },

    async addScale({ step, most = '', name }: { step: string; most?: string; name: string }): Promise<void> {
      await press('Add a scale');
      await choose(step);
      await sheet.getByLabel('Most that it carries').fill(most);
      await sheet.getByLabel('Name').fill(name);
      await save();
    },

    async takeStartingFormula(): Promise<void> {
      await press('Take the starting formula');
      await heading('Caraway and pepper, invented example');
    },

    /** Meat, salt and a curing salt, each in percent of meat; what the bag prints. */
    async newFormula(given: { name: string; salt: string; cure: string; nitrite: string }): Promise<void> {
      await this.go('/formulas/new');
      await page.getByLabel('Name', { exact: true }).fill(given.name);
      await page.getByLabel('Fat wanted in the meat').fill('25');
      await press(/^Salt/);
      await sheet.getByLabel('Amount', { exact: true }).fill(given.salt);
      await save('Done');
      await press(/^Curing salt/);
      await sheet.getByLabel('Amount', { exact: true }).fill(given.cure);
      await sheet.getByLabel('Nitrite', { exact: true }).fill(given.nitrite);
      await sheet.getByLabel('Nitrate', { exact: true }).fill('0');
      await save('Done');
      await press('Save');
      await heading(given.name);
    },

    /** Each question that a careful colleague would ask must come, in this order; each is passed. */
    async openBatch(lot?: string, questions: readonly string[] = []): Promise<void> {
      await follow('Open a batch');
      await heading('Open a batch');
      if (lot !== undefined) await page.getByLabel('Lot', { exact: true }).fill(lot);
      await press('Open the batch');
      for (const question of questions) {
        await expect(page.getByRole('alertdialog')).toContainText(question);
        await press('Open it');
      }
      await heading('Weigh-out');
    },

    async weighMeat(lean: string, fat: string): Promise<void> {
      for (const [part, grams] of [
        [/^Lean/, lean],
        [/^Fat/, fat],
      ] as const) {
        await press(part);
        await keys(grams);
        await save('Add this weight');
      }
    },

    /** Every line that is left, as its scale is to show it. */
    async weighLinesAsAsked(): Promise<void> {
      await press('Weigh next line');
      for (;;) {
        const title = await sheet.getByRole('heading').textContent();
        await press(/^It shows/);
        await expect(sheet.getByRole('heading', { name: title ?? '', exact: true })).toBeHidden();
        if (!(await sheet.isVisible())) return;
      }
    },

    async benchSteps(minceC: string): Promise<void> {
      for (const step of ['cleaned', 'ground', 'mixed', 'stuffed']) {
        await press(`Write down: ${step}`);
        if (step === 'ground') await page.getByLabel('Temperature of the mince').fill(minceC);
        await save();
      }
    },

    async beginPieces({
      diameter,
      target,
      tare = '0',
    }: {
      diameter?: string;
      target?: string;
      tare?: string;
    } = {}) {
      if (diameter !== undefined) await page.getByLabel('Diameter as stuffed').fill(diameter);
      if (target !== undefined) await page.getByLabel('Target loss').fill(target);
      await page.getByLabel('Tare').fill(tare);
      await press('Begin to weigh');
    },

    async weighPieces(grams: readonly string[], first = 1): Promise<void> {
      for (const [at, text] of grams.entries()) {
        await keys(text);
        await press(`Save, next is ${first + at + 1}`);
        await heading(`Piece ${first + at + 1}`);
      }
    },

    async readRoom(degrees: string): Promise<void> {
      await press('Read the room');
      await page.getByLabel('Temperature of the room').fill(degrees);
      await save();
    },

    async readPh(ph: string): Promise<void> {
      await press('Read pH');
      await page.getByLabel('pH on the meter').fill(ph);
      await save();
    },

    async endFerment(reason: string): Promise<void> {
      await press('End the ferment');
      await choose(reason);
      await save('End it');
    },

    async hang({ airC, rhPct }: { airC: string; rhPct: string }): Promise<void> {
      await press('Move to drying');
      await page.getByLabel('Air there').fill(airC);
      await page.getByLabel('Humidity there').fill(rhPct);
      await save('Hang it');
      await heading('Weigh round');
    },

    /** One weigh round; the last of the weights is that of the last piece. */
    async weighRound(grams: readonly string[]): Promise<void> {
      for (const [at, text] of grams.entries()) {
        await keys(text);
        await press(/^Save, /);
        const next =
          at + 1 < grams.length ? page.getByText(`piece ${at + 2} of`) : page.getByText('Round done');
        await expect(next).toBeVisible();
      }
    },
  };
}
