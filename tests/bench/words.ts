/** The stock of words that generated houses are written with. All invented; nothing here is computed. */

export const firsts =
  "Lantern Slack Bollard Tidal Harbour Halyard Copper Fog Signal Windward Leeward Cinder Salt Ember Winter Paper Kelp Gannet Rope Pilot Amber Brass Slate Heather Quay Moor Drift Ladder Chalk Velvet Timber Thistle Anchor Marram Petrel Ferry Ledger Oilskin Saffron Vesper".split(
    " ",
  );
export const seconds =
  "Bell Lamp Ledge Mooring Berth Passage Crossing Watch Reach Hour Kettle Window Landing Pocket Drawer Sail Current Whistle Shore Stair Table Chapel Orchard Garden Market Engine Letter Mirror Thread Season Shilling Button Feather Parlour Compass Causeway Breakwater Lookout Shingle Tiller".split(
    " ",
  );
export const thirds = [
  "at Dusk",
  "at Dawn",
  "Ashore",
  "Adrift",
  "in Fog",
  "by Night",
  "Inbound",
  "Outbound",
  "Revisited",
  "Under Repair",
  "on the Turn",
  "at Low Water",
  "at High Water",
  "Homeward",
  "Unsigned",
  "in Two Parts",
  "Below Deck",
  "Off the Slip",
  "Half Ahead",
  "Full Astern",
];

/** What sentences are made of: distinct prose, as stories and notes are. */
export const prose =
  "the a our one first last old quiet ferry slip lamp rope crew kitchen harbour island morning evening winter summer boat mast kettle keeper pilot daughter uncle garden smoke honey tide wind rain glass shelf bottle spoon tin pour stir rest taste cold bright soft bitter round long dry warm clean after before under over beside between until since with without from toward made found kept left brought remembered promised traded borrowed mended waited sailed arrived returned knew said took gave went came stood because while when where who that which never always often once twice again slowly early late enough".split(
    " ",
  );
