/**
 * Advance widths of the letters the pictures are set in, in thousandths of the type size, for the characters from
 * space (32) to tilde (126). Source: the hmtx tables of Atkinson Hyperlegible Next (regular and semibold); every glyph
 * of Atkinson Hyperlegible Mono is 632 wide. With them a label knows its own length without a browser.
 */
export const SANS_REGULAR_WIDTHS: readonly number[] = [
  280, 286, 301, 651, 592, 919, 731, 160, 299, 299, 485, 606, 210, 362, 210, 387, 648, 407, 548, 576, 614, 588, 598,
  510, 615, 595, 210, 210, 553, 628, 553, 480, 778, 626, 613, 645, 669, 569, 552, 694, 694, 392, 512, 631, 541, 824,
  693, 714, 592, 724, 614, 592, 558, 690, 593, 856, 623, 575, 607, 317, 387, 344, 552, 372, 243, 525, 566, 485, 564,
  538, 314, 558, 550, 252, 245, 492, 262, 845, 550, 548, 566, 574, 349, 471, 326, 540, 461, 684, 481, 449, 460, 344,
  237, 344, 555,
];

export const SANS_SEMIBOLD_WIDTHS: readonly number[] = [
  303, 298, 362, 730, 604, 953, 727, 195, 324, 324, 485, 598, 252, 369, 253, 424, 656, 430, 569, 592, 621, 602, 617,
  529, 621, 578, 253, 253, 564, 617, 564, 526, 780, 662, 634, 654, 683, 589, 562, 711, 699, 415, 546, 654, 548, 848,
  710, 737, 617, 747, 639, 604, 592, 687, 628, 877, 666, 627, 615, 333, 424, 344, 573, 391, 274, 544, 587, 502, 586,
  555, 349, 582, 565, 285, 255, 536, 301, 870, 565, 567, 587, 591, 368, 497, 360, 559, 509, 723, 522, 499, 492, 370,
  249, 370, 543,
];

export const MONO_WIDTH = 632;

/** What a character outside the two lists is taken for: as wide as an average lower-case letter. */
export const OTHER_GLYPH_WIDTH = 555;
