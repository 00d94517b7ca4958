// Every cell the program holds is the published one, and every published row is held: the rows of
// core/standards/rows against tests/reference/tables, both ways.

#include <gtest/gtest.h>

#include <set>
#include <span>
#include <variant>

#include "reference/tsv.h"
#include "standards/rows/adjustment_more_than_three.h"
#include "standards/rows/ambient_correction.h"
#include "standards/rows/ampacity_30c.h"
#include "standards/rows/bend_radius_multiples.h"
#include "standards/rows/bending_space_at_terminals_a.h"
#include "standards/rows/bending_space_opposite_wall_b.h"
#include "standards/rows/bonding_jumper.h"
#include "standards/rows/conductor_bare.h"
#include "standards/rows/conductor_compact_al.h"
#include "standards/rows/conductor_insulated.h"
#include "standards/rows/equipment_grounding.h"
#include "standards/rows/grounding_electrode.h"
#include "standards/rows/gutter_stock_sizes.h"
#include "standards/rows/impedance_table_9.h"
#include "standards/rows/knockouts.h"
#include "standards/rows/phase_colours.h"
#include "standards/rows/raceway_dimensions.h"
#include "standards/rows/raceway_fill_percent.h"
#include "standards/rows/stranding.h"
#include "standards/rows/torque_annex_i.h"

namespace gw::standards::rows {
namespace {

using test::readTsv;
using test::Tsv;
using test::TsvRow;

template <class Row>
struct Column {
    const char* name;
    std::variant<double Row::*, std::string_view Row::*, Basis Row::*> member;
};

std::string basisCell(Basis basis) {
    switch (basis) {
        case Basis::seenTwice:
            return "seen2";
        case Basis::seen:
            return "seen";
        case Basis::memory:
            return "memory";
        case Basis::commonPractice:
        case Basis::partData:
        case Basis::layoutData:
        case Basis::geometry:
            return "not a basis of a published row";
    }
    return {};
}

double numberCell(const TsvRow& row, const std::string& column) {
    if (row.at(column) == "-") {
        return kBlank;
    }
    return row.at(column) == "NS" ? kNotSpecified : test::number(row, column);
}

template <class Row>
void expectCell(const TsvRow& published, const Column<Row>& column, const Row& held) {
    if (const auto* member = std::get_if<double Row::*>(&column.member)) {
        EXPECT_EQ(held.*(*member), numberCell(published, column.name)) << column.name;
    } else if (const auto* text = std::get_if<std::string_view Row::*>(&column.member)) {
        EXPECT_EQ(held.*(*text), published.at(column.name)) << column.name;
    } else {
        const auto basis = std::get<Basis Row::*>(column.member);
        EXPECT_EQ(basisCell(held.*basis), published.at(column.name)) << column.name;
    }
}

// notHeld: columns of the file that the program has no use for. Together with `columns` they must
// be all of the file's, so that a column added to it cannot be overlooked.
template <class Row>
void expectSame(const std::string& file,
                std::span<const Row> held,
                const std::vector<Column<Row>>& columns,
                const std::set<std::string>& notHeld) {
    const Tsv published = readTsv(file);
    std::set<std::string> known = notHeld;
    for (const auto& column : columns) {
        known.insert(column.name);
    }
    EXPECT_EQ(known, std::set<std::string>(published.columns.begin(), published.columns.end()));
    ASSERT_EQ(held.size(), published.rows.size());
    for (std::size_t i = 0; i < held.size(); ++i) {
        SCOPED_TRACE(file + " row " + std::to_string(i + 1));
        for (const auto& column : columns) {
            expectCell(published.rows[i], column, held[i]);
        }
    }
}

template <class Row, std::size_t kCount>
std::span<const Row> all(const std::array<Row, kCount>& rows) {
    return rows;
}

// clang-format off
TEST(PublishedTables, InsulatedConductors) {
    using R = InsulatedRow;
    expectSame<R>("conductor_insulated", all(kInsulatedRows),
        {{"size", &R::size}, {"family", &R::family}, {"diameter_in", &R::diameter},
         {"area_in2", &R::area}, {"basis", &R::basis}},
        {"diameter_mm", "area_mm2", "note"});
}

TEST(PublishedTables, BareConductors) {
    using R = BareRow;
    expectSame<R>("conductor_bare", all(kBareRows),
        {{"size", &R::size}, {"area_cmil", &R::circularMils}, {"strands", &R::strands},
         {"strand_diam_in", &R::strandDiameter}, {"overall_diam_in", &R::diameter},
         {"area_in2", &R::area}, {"dc_ohm_kft_cu", &R::copperOhms},
         {"dc_ohm_kft_cu_coated", &R::coatedCopperOhms}, {"dc_ohm_kft_al", &R::aluminiumOhms},
         {"basis", &R::basis}},
        {});
}

TEST(PublishedTables, CompactConductors) {
    using R = CompactRow;
    expectSame<R>("conductor_compact_al", all(kCompactRows),
        {{"size", &R::size}, {"bare_diam_in", &R::bareDiameter},
         {"thw_diam_in", &R::thwDiameter}, {"thw_area_in2", &R::thwArea},
         {"thhn_diam_in", &R::thhnDiameter}, {"thhn_area_in2", &R::thhnArea},
         {"xhhw_diam_in", &R::xhhwDiameter}, {"xhhw_area_in2", &R::xhhwArea},
         {"basis", &R::basis}},
        {"note"});
}

TEST(PublishedTables, Stranding) {
    using R = StrandingRow;
    expectSame<R>("stranding", all(kStrandingRows),
        {{"size", &R::sizes}, {"class", &R::stranding}, {"strands", &R::strands},
         {"wire_diam_in", &R::wireDiameter}, {"basis", &R::basis}},
        {"note"});
}

TEST(PublishedTables, BendingSpaceAtTerminals) {
    using R = BendingARow;
    expectSame<R>("bending_space_at_terminals_A", all(kBendingARows),
        {{"size_all_other", &R::sizes}, {"compact_aa8000", &R::compactSizes},
         {"w1", &R::wires1}, {"w2", &R::wires2}, {"w3", &R::wires3}, {"w4", &R::wires4},
         {"w5", &R::wires5}, {"basis", &R::basis}},
        {"note"});
}

TEST(PublishedTables, BendingSpaceOppositeWall) {
    using R = BendingBRow;
    expectSame<R>("bending_space_opposite_wall_B", all(kBendingBRows),
        {{"size_all_other", &R::sizes}, {"compact_aa8000", &R::compactSizes},
         {"w1_in", &R::wires1}, {"w1_reduction_in", &R::reduction1},
         {"w2_in", &R::wires2}, {"w2_reduction_in", &R::reduction2},
         {"w3_in", &R::wires3}, {"w3_reduction_in", &R::reduction3},
         {"w4_in", &R::wires4}, {"w4_reduction_in", &R::reduction4}, {"basis", &R::basis}},
        {"note"});
}

TEST(PublishedTables, BendRadiusMultiples) {
    using R = BendRadiusRow;
    expectSame<R>("bend_radius_multiples", all(kBendRadiusRows),
        {{"cable", &R::cable}, {"insulation_in", &R::insulation},
         {"overall_diam_in", &R::diameter}, {"multiple", &R::multiple}, {"rule", &R::rule},
         {"basis", &R::basis}},
        {});
}

TEST(PublishedTables, Ampacity) {
    using R = AmpacityRow;
    expectSame<R>("ampacity_30C", all(kAmpacityRows),
        {{"size", &R::size}, {"cu60", &R::copper60}, {"cu75", &R::copper75},
         {"cu90", &R::copper90}, {"al60", &R::aluminium60}, {"al75", &R::aluminium75},
         {"al90", &R::aluminium90}, {"basis", &R::basis}},
        {"edition_2008_and_earlier", "note"});
}

TEST(PublishedTables, AdjustmentFactors) {
    using R = AdjustmentRow;
    expectSame<R>("adjustment_more_than_three", all(kAdjustmentRows),
        {{"n_from", &R::from}, {"n_to", &R::to}, {"percent", &R::percent},
         {"factor", &R::factor}, {"basis", &R::basis}},
        {});
}

TEST(PublishedTables, AmbientFactors) {
    using R = AmbientRow;
    expectSame<R>("ambient_correction", all(kAmbientRows),
        {{"c_from", &R::fromCelsius}, {"c_to", &R::toCelsius}, {"factor_60", &R::factor60},
         {"factor_75", &R::factor75}, {"factor_90", &R::factor90}, {"basis", &R::basis}},
        {"f_from", "f_to"});
}

TEST(PublishedTables, Impedance) {
    using R = ImpedanceRow;
    expectSame<R>("impedance_table_9", all(kImpedanceRows),
        {{"size", &R::size}, {"x_pvc_al", &R::xPvc}, {"x_steel", &R::xSteel},
         {"r_cu_pvc", &R::copperPvc}, {"r_cu_al", &R::copperAluminium},
         {"r_cu_steel", &R::copperSteel}, {"r_al_pvc", &R::aluminiumPvc},
         {"r_al_al", &R::aluminiumAluminium}, {"r_al_steel", &R::aluminiumSteel},
         {"basis", &R::basis}},
        {"note"});
}

TEST(PublishedTables, BondingJumpers) {
    using R = JumperRow;
    expectSame<R>("bonding_jumper", all(kJumperRows),
        {{"cu_over_cmil", &R::copperOver}, {"cu_through_cmil", &R::copperThrough},
         {"al_over_cmil", &R::aluminiumOver}, {"al_through_cmil", &R::aluminiumThrough},
         {"cu_jumper", &R::copper}, {"al_jumper", &R::aluminium}, {"basis", &R::basis}},
        {"cu_ungrounded", "al_ungrounded", "note"});
}

TEST(PublishedTables, GroundingElectrodeConductors) {
    using R = ElectrodeRow;
    expectSame<R>("grounding_electrode", all(kElectrodeRows),
        {{"cu_over_cmil", &R::copperOver}, {"cu_through_cmil", &R::copperThrough},
         {"al_over_cmil", &R::aluminiumOver}, {"al_through_cmil", &R::aluminiumThrough},
         {"cu_gec", &R::copper}, {"al_gec", &R::aluminium}, {"basis", &R::basis}},
        {"cu_ungrounded", "al_ungrounded", "note"});
}

TEST(PublishedTables, EquipmentGroundingConductors) {
    using R = EquipmentRow;
    expectSame<R>("equipment_grounding", all(kEquipmentRows),
        {{"ocpd_a", &R::deviceAmperes}, {"cu", &R::copper}, {"al", &R::aluminium},
         {"basis", &R::basis}},
        {"note"});
}

TEST(PublishedTables, Torque) {
    using R = TorqueRow;
    expectSame<R>("torque_annex_I", all(kTorqueRows),
        {{"table", &R::table}, {"key_value", &R::key}, {"screw", &R::screw},
         {"torque_A_lbin", &R::columnA}, {"torque_B_lbin", &R::columnB}, {"basis", &R::basis}},
        {"key", "note"});
}

TEST(PublishedTables, Raceways) {
    using R = RacewayRow;
    expectSame<R>("raceway_dimensions", all(kRacewayRows),
        {{"type", &R::type}, {"trade_size", &R::tradeSize},
         {"metric_designator", &R::metricDesignator}, {"id_in", &R::insideDiameter},
         {"area_in2", &R::area}, {"area40_in2", &R::area40}, {"area60_in2", &R::area60},
         {"od_in", &R::outsideDiameter}, {"basis", &R::basis}},
        {"note"});
}

TEST(PublishedTables, FillPercents) {
    using R = FillRow;
    expectSame<R>("raceway_fill_percent", all(kFillRows),
        {{"case", &R::situation}, {"percent", &R::percent}, {"rule", &R::rule},
         {"basis", &R::basis}},
        {});
}

TEST(PublishedTables, Knockouts) {
    using R = KnockoutRow;
    expectSame<R>("knockouts", all(kKnockoutRows),
        {{"trade_size", &R::tradeSize}, {"ko_nominal_in", &R::nominal}, {"ko_min_in", &R::least},
         {"ko_max_in", &R::greatest}, {"locknut_od_in", &R::locknut}, {"basis", &R::basis}},
        {"locknut_basis", "note"});
}

TEST(PublishedTables, GutterStock) {
    using R = StockRow;
    expectSame<R>("gutter_stock_sizes", all(kStockRows),
        {{"item", &R::item}, {"value", &R::value}, {"basis", &R::basis}},
        {"area_in2", "fill20_in2", "fill75_in2", "note"});
}

TEST(PublishedTables, PhaseColours) {
    using R = ColourRow;
    expectSame<R>("phase_colours", all(kColourRows),
        {{"system", &R::system}, {"conductor", &R::conductor}, {"colour", &R::colour},
         {"status", &R::status}, {"rule_or_note", &R::note}, {"basis", &R::basis}},
        {});
}
// clang-format on

}  // namespace
}  // namespace gw::standards::rows
