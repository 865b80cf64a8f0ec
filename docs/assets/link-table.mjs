// @ts-check
// What the short link of a job stands on. A field's number is its place here, from 1. Names are only ever appended: none is
// taken out, renamed or moved, or links that people hold would be read wrongly.

export const FIELDS = `
  asbestos_result result_rooms result_layers sag stains loose_board cracks heated_ceiling loose_fill sprinklers sprayed
  year_built built paint_test texture_painted times_painted sheen texture_depth_in texture_depth hand_test patch_test
  material above joist_spacing_in joists layers_up joists_carry rated_ceiling who_works building place ceiling_height_ft
  height may_drop occupied household floors finish_wanted light show_in rooms area_sqft more_areas samples_taken results
  disturbed_sqft earlier_work paid_work housing torn_out covering drop_in face_burns fixtures person_height_in floor
  head_gap_in base_width_ft leaning_ladder_ft floor_work roll_width_ft roll_length_ft overlap_in turn_up_in registers
  pieced wall_film_width_ft wall_film_length_ft floor_film_mil volume_cuft air_changes_per_hour machine_cfm derate_pct
  rate_gal_per_100sqft passes tank_gal texture_thickness_in texture_psf water_gal_per_100sqft bag_gal bag_fill_pct
  bag_limit_lb board_down_sqft old_board_in coats coat_thickness_in texture_open_pct shrinkage_pct waste_pct pail_gal
  compound_lb_per_gal water_pct door_width_in hall_width_in hall_length_ft hall_beyond_ft room_along_ft room_deep_ft
  door_corner_in door_corner_side turn_from_in turn_to_in stair_width_in landing_in landing_kind landing_width_in
  stair_foot_ft stair_head_ft lift_width_in lift_depth_in lift_height_in lift_door_in lift_door_height_in lift_lobby_in
  door_height_in turn_from_length_ft turn_to_length_ft stair_rise_in stair_run_in upper_rise_in upper_run_in headroom_in
  sheet_width_in board_thickness_in joist_direction sheet_lengths_ft longest_sheet_ft existing_ceiling_in
  joist_offset_in insulation_psf wet_texture least_strip_in load_limit_psf effort fixing behind_tiles tile_length_in
  tile_width_in tiles_per_carton tile_weight_psf furring_spacing_in joint_ft finish_level caulked_edge_ft tape_roll_ft
  temperature_f humidity_pct water_gal outdoor_temperature_f outdoor_humidity_pct heat_held closed_air_changes_per_hour
  dehumidifier_pt_per_day dehumidifier_rated_f dehumidifier_kind wet_area_sqft open_air_changes_per_hour
  burner_btu_per_h surface spread_sqft_per_gal primer_sqft_per_gal texture_extra_pct way paint_coats people
  hours_per_day start_day work_week days_off laboratory_days_low laboratory_days_high pace_pct
  prices rate_per_hour labor_sum materials_sum others_sum tax_sum money offer_by offer_day offer_until not_in_offer
  room_air
`.trim().split(/\s+/);

// Jobs that the model is shown before the first letter of a link, so that what is usual costs little. They stay as they
// are, letter by letter: a change here is a new version of the link.

/** @type {Record<string, string>[]} */
export const SAMPLES = [
  { asbestos_result: "none", result_rooms: "this", result_layers: "all", sag: "no", stains: "none", loose_board: "tight", cracks: "none", heated_ceiling: "no", loose_fill: "none", sprinklers: "no", sprayed: "before-1978", built: "before-1978", paint_test: "lead", texture_painted: "no", times_painted: "never", sheen: "flat", texture_depth: "thin", hand_test: "holds", patch_test: "wet", material: "board", above: "rooms", joists: "close", layers_up: "one", joists_carry: "yes", rated_ceiling: "no", who_works: "owner", building: "house", height: "low", may_drop: "yes", occupied: "no", household: "adults", floors: "replaced", finish_wanted: "smooth", light: "soft", show_in: "metric", paid_work: "no", housing: "assisted", torn_out: "yes", covering: "skim", face_burns: "yes", floor: "film", floor_work: "dry", pieced: "yes", old_board_in: "1/4", door_corner_side: "far", landing_kind: "quarter", sheet_width_in: "54", board_thickness_in: "1/4", joist_direction: "east-west", wet_texture: "yes", effort: "thorough", fixing: "glue", behind_tiles: "firm", finish_level: "0", heat_held: "yes", dehumidifier_rated_f: "65", dehumidifier_kind: "desiccant", surface: "smooth", way: "wet-scrape", work_week: "mon-sat", year_built: "1964", texture_depth_in: "3/16", joist_spacing_in: "16", place: "Colorado", ceiling_height_ft: "8' 1\"", area_sqft: "280", samples_taken: "3", disturbed_sqft: "280", drop_in: "1/2", person_height_in: "5' 10\"", head_gap_in: "6", base_width_ft: "2' 5\"", leaning_ladder_ft: "10", roll_width_ft: "10", roll_length_ft: "100", overlap_in: "12", turn_up_in: "12", registers: "2", wall_film_width_ft: "8", wall_film_length_ft: "400", floor_film_mil: "6", volume_cuft: "2240", air_changes_per_hour: "4", machine_cfm: "1000", derate_pct: "25", rate_gal_per_100sqft: "0.9", passes: "2", tank_gal: "2", texture_thickness_in: "1/4", texture_psf: "0.3", water_gal_per_100sqft: "1.8", bag_gal: "42", bag_fill_pct: "65", bag_limit_lb: "35", board_down_sqft: "0", coats: "2", coat_thickness_in: "1/16", texture_open_pct: "75", shrinkage_pct: "25", waste_pct: "10", pail_gal: "4.5", compound_lb_per_gal: "13.7", water_pct: "35", door_width_in: "30", hall_width_in: "36", hall_length_ft: "16", hall_beyond_ft: "4", room_along_ft: "12", room_deep_ft: "12", door_corner_in: "4", turn_from_in: "36", turn_to_in: "36", stair_width_in: "34", landing_in: "36", landing_width_in: "72", stair_foot_ft: "12", stair_head_ft: "12", lift_width_in: "54", lift_depth_in: "51", lift_height_in: "92", lift_door_in: "36", lift_door_height_in: "84", lift_lobby_in: "96", door_height_in: "80", turn_from_length_ft: "14", turn_to_length_ft: "14", stair_rise_in: "7 1/2", stair_run_in: "10", upper_rise_in: "7 1/2", upper_run_in: "10", headroom_in: "80", sheet_lengths_ft: "8, 10, 12", longest_sheet_ft: "12", existing_ceiling_in: "1/2", joist_offset_in: "14 1/2", insulation_psf: "1", least_strip_in: "6", load_limit_psf: "3", tile_length_in: "12", tile_width_in: "12", tiles_per_carton: "40", tile_weight_psf: "0.8", furring_spacing_in: "12", joint_ft: "96", caulked_edge_ft: "68", tape_roll_ft: "250", temperature_f: "68", humidity_pct: "50", water_gal: "12", outdoor_temperature_f: "50", outdoor_humidity_pct: "70", closed_air_changes_per_hour: "0.3", dehumidifier_pt_per_day: "50", wet_area_sqft: "280", open_air_changes_per_hour: "3", burner_btu_per_h: "0", spread_sqft_per_gal: "350", primer_sqft_per_gal: "250", texture_extra_pct: "50", paint_coats: "2", people: "2", hours_per_day: "8", start_day: "2027-03-15", laboratory_days_low: "3", laboratory_days_high: "10", pace_pct: "150" },
  { asbestos_result: "trace", result_rooms: "other", result_layers: "texture", sag: "yes", stains: "old", loose_board: "loose", cracks: "fine", heated_ceiling: "yes", loose_fill: "other", sprinklers: "yes", sprayed: "to-1985", built: "later", paint_test: "none", texture_painted: "yes", times_painted: "once", sheen: "gloss", texture_depth: "deep", hand_test: "falls", patch_test: "dry", material: "plaster", above: "home", joists: "apart", layers_up: "more", joists_carry: "no", rated_ceiling: "yes", who_works: "renter", building: "other", height: "spare", may_drop: "no", occupied: "yes", household: "risk", floors: "covered", finish_wanted: "texture", light: "raking", housing: "children", covering: "board-1/4", floor: "stairs", old_board_in: "3/8", door_corner_side: "near", landing_kind: "half", sheet_width_in: "both", board_thickness_in: "3/8", fixing: "grid", behind_tiles: "loose", finish_level: "1", heat_held: "no", surface: "texture", way: "dry-scrape", work_week: "all" },
  { asbestos_result: "found", result_layers: "mixed", stains: "wet", cracks: "wide", loose_fill: "pebbles", sprayed: "later", times_painted: "often", patch_test: "both", material: "concrete", above: "attic", joists: "far", who_works: "landlord", height: "usual", floors: "dry", finish_wanted: "any", housing: "other", covering: "board-3/8", old_board_in: "5/8", board_thickness_in: "5/8", behind_tiles: "paint", finish_level: "2", surface: "bare", way: "sand", work_week: "weekend" },
  { times_painted: "painted", patch_test: "hard", above: "roof", who_works: "firm", height: "high", covering: "board-1/2", behind_tiles: "bare", finish_level: "3", surface: "stained", way: "skim-over" },
  { who_works: "employee", covering: "board-5/8", finish_level: "5", way: "board-over" },
  { covering: "furring-1/2", way: "panel-over" },
  { covering: "tile-glued", way: "leave-and-seal" },
  { covering: "tile-furring", way: "licensed-removal" },
  { covering: "panel-1/4" },
  { covering: "plank" },
  { covering: "grid" },
  { asbestos_result: "none", result_rooms: "this", result_layers: "all", sag: "no", stains: "none", loose_board: "tight", cracks: "fine", heated_ceiling: "no", loose_fill: "other", sprinklers: "no", built: "later", times_painted: "never", sheen: "flat", texture_depth: "thin", hand_test: "holds", patch_test: "wet", material: "board", above: "rooms", joists: "close", layers_up: "one", joists_carry: "yes", rated_ceiling: "no", who_works: "owner", building: "house", height: "usual", may_drop: "yes", occupied: "yes", household: "adults", floors: "covered", finish_wanted: "smooth", light: "soft" },
  { rooms: "Living: 20' x 14'; Den: E 14' S 6' W 4' S 5' W 10' N 11'", ceiling_height_ft: "8" },
  { rooms: "Living: 20' x 14'", more_areas: "Bedrooms: 420", building: "house", place: "Colorado" },
  { year_built: "1964", disturbed_sqft: "3", earlier_work: "12 days ago: 4 sq ft", paid_work: "yes" },
  { covering: "board-1/2", ceiling_height_ft: "8", fixtures: "box hall: 0 in; fan living: 7' 4\"; smoke hall; sprinkler hall: 1 in; cupboard: 1/4 in; room living: 8'" },
  { ceiling_height_ft: "9", person_height_in: "5' 10\"", floor: "clear" },
  { rooms: "Living: 20' x 14'; Den: E 14' S 6' W 4' S 5' W 10' N 11'", ceiling_height_ft: "8" },
  { rooms: "Living: 20' x 14'", ceiling_height_ft: "8", machine_cfm: "600" },
  { rooms: "Living: 20' x 14'", texture_painted: "no", tank_gal: "2" },
  { rooms: "Living: 20' x 14'", texture_thickness_in: "1/8", texture_psf: "0.3", water_gal_per_100sqft: "1.8" },
  { rooms: "Living: 20' x 14'", texture_depth_in: "1/8", coats: "2", coat_thickness_in: "1/16", compound_lb_per_gal: "8.9" },
  { door_width_in: "32", hall_width_in: "40", hall_length_ft: "17", hall_beyond_ft: "6", room_along_ft: "14", room_deep_ft: "13", turn_from_in: "40", turn_to_in: "42", stair_width_in: "36" },
  { rooms: "Living: 20' x 14'", joist_direction: "north-south", joist_spacing_in: "16", board_thickness_in: "1/2", rated_ceiling: "no" },
  { rooms: "Living: 20' 6\" x 14'", fixing: "furring", behind_tiles: "firm", tile_length_in: "12", tile_width_in: "12" },
  { area_sqft: "280", joint_ft: "96", finish_level: "4", caulked_edge_ft: "68" },
  { temperature_f: "68", humidity_pct: "50", coat_thickness_in: "1/16", coats: "2", texture_depth_in: "1/8" },
  { rooms: "Living: 20' x 14'", coats: "2", coat_thickness_in: "1/16", temperature_f: "68", humidity_pct: "50", outdoor_temperature_f: "50", outdoor_humidity_pct: "70", heat_held: "yes" },
  { rooms: "Living: 20' x 14'", surface: "new", coats: "2" },
  { way: "skim-over", rooms: "Living: 20' x 14'; Bed: 12' x 11'", texture_depth_in: "1/8", start_day: "2027-03-15" },
  { rooms: "Living: 20' x 14'; Kitchen: 12' x 10'; Dining: 11' x 12'; Hall: 12' x 4'; Bath: 8' x 5'; Bedroom: 13' x 11'", ceiling_height_ft: "8", texture_depth_in: "1/8", joist_spacing_in: "16", asbestos_result: "none", built: "later", material: "board", year_built: "1984", height: "usual", way: "skim-over", people: "2", start_day: "2027-04-12" },
  { rooms: "Living room: 18' 6\" x 13' 4\"\nDining room: 12' 3\" x 10' 8\"\nHallway: 15' x 3' 6\"\nBedroom 1: 14' 9\" x 12' 2\"\nBedroom 2: 11' 10\" x 10'\nFamily room: 21' x 15' 5\"", texture_depth_in: "3/16", ceiling_height_ft: "8", temperature_f: "70", humidity_pct: "45", coats: "3", year_built: "1978" },
  { rooms: "Master bedroom: 16 x 14; Guest room: 12.5 x 11; Closet: 6 x 4; Entry: 8 x 6; Laundry: 9 x 7; Office: 10 x 12; Stairs: 10 x 3.5; Den: 14 x 12", ceiling_height_ft: "9", texture_depth_in: "1/4", coats: "2" },
  { rooms: "Wohnzimmer: 5.20 m x 4.10 m; Bad: 2.4 m x 1.8 m", show_in: "metric", ceiling_height_ft: "2.5 m", texture_depth_in: "3 mm" },
  { rooms: "Attic: 20' x 15' slope 4:12 N; Loft: 12' x 18' slope 6:12 E less 2' x 4'; Den: E 14' S 6' W 4' S 5' W 10' N 11'; Great room: 24' x 18' less 2' x 3' at 6' x 3'; L-shape: E 12' 6\" S 10' W 5' S 4' 6\" W 7' 6\" N 14' 6\"", joist_direction: "east-west", joist_spacing_in: "24", sheet_lengths_ft: "8, 10, 12", ceiling_height_ft: "8 1/2", texture_depth_in: "1/4" },
  { fixtures: "box hall: 0 in; light hall: 0 in; recessed bath: 0 in; fan living: 7' 4\"; smoke hall: 6 in; co hall; register hall; hatch hall; door hall: 3 in; cupboard: 1/4 in; crown living; trim hall: 1 in; track living: 2 in; furniture bedroom: 7' 8\"; room living: 8'; bath: 7'", more_areas: "Bedrooms: 420; Hall: 90", results: "texture: none; compound: none; board: none", earlier_work: "12 days ago: 4 sq ft; in 5 days: 3 sq ft" },
  { joist_spacing_in: "16", ceiling_height_ft: "8", rooms: "Bed 1: 12 x 11; Bed 2: 10 x 10; Bath: 5 x 8; Hall: 3 x 14; Kitchen: 13 x 9; Living: 15 x 17; Garage: 20 x 19; Basement: 26 x 22", asbestos_result: "none", result_rooms: "this", result_layers: "all", sag: "no", stains: "none", loose_board: "tight", cracks: "none", sprayed: "before-1978", texture_painted: "no", hand_test: "holds", patch_test: "wet", material: "board", who_works: "owner", finish_wanted: "smooth", temperature_f: "68", humidity_pct: "50" },
];
