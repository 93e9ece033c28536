// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sizing/assignment_graph.h"

#include <boost/graph/adjacency_list.hpp>
#include <boost/graph/max_cardinality_matching.hpp>
#include <boost/graph/successive_shortest_path_nonnegative_weights.hpp>

namespace borewright {
namespace {

using Cost = std::int64_t;
using Plain = boost::adjacency_list<boost::vecS, boost::vecS, boost::undirectedS>;
using Links = boost::adjacency_list_traits<boost::vecS, boost::vecS, boost::directedS>;
struct Arc {
    int capacity = 0;
    int residual = 0;
    Cost cost = 0;
    Links::edge_descriptor reverse{};
};
using Network =
    boost::adjacency_list<boost::vecS, boost::vecS, boost::directedS, boost::no_property, Arc>;

std::size_t at(int index) {
    return static_cast<std::size_t>(index);
}

// Vertices: rows, columns, then the source that feeds every row and the sink behind every column.
struct Places {
    explicit Places(const AssignmentProblem& problem)
        : rows(at(problem.rows))
        , columns(at(problem.columns)) {}
    [[nodiscard]] std::size_t column(std::size_t j) const { return rows + j; }
    [[nodiscard]] std::size_t source() const { return rows + columns; }
    [[nodiscard]] std::size_t sink() const { return rows + columns + 1; }
    [[nodiscard]] std::size_t count() const { return rows + columns + 2; }
    std::size_t rows;
    std::size_t columns;
};

void join(Network& network, std::size_t from, std::size_t to, Cost cost) {
    const auto forth = boost::add_edge(from, to, Arc{1, 0, cost, {}}, network).first;
    const auto back = boost::add_edge(to, from, Arc{0, 0, -cost, {}}, network).first;
    network[forth].reverse = back;
    network[back].reverse = forth;
}

// Boost adds up the distances of places that cannot be reached, which would overflow; so a closed
// pair is not left out but dearer than any whole assignment of open ones.
Network networkOf(const AssignmentProblem& problem, const Places& places, Cost most) {
    const Cost closed = problem.rows * most + 1;
    Network network(places.count());
    for (int i = 0; i < problem.rows; ++i) {
        join(network, places.source(), at(i), 0);
        for (int j = 0; j < problem.columns; ++j)
            join(network, at(i), places.column(at(j)),
                 isOpen(problem, i, j, most) ? *problem.cost[at(i) * places.columns + at(j)]
                                             : closed);
    }
    for (std::size_t j = 0; j < places.columns; ++j)
        join(network, places.column(j), places.sink(), 0);
    return network;
}

// The potentials of the vertices, after which no arc of the residual network costs less than 0.
std::vector<Cost> solve(Network& network, const Places& places) {
    const auto index = boost::get(boost::vertex_index, network);
    std::vector<Links::edge_descriptor> before(places.count());
    std::vector<Cost> distance(places.count());
    std::vector<Cost> potential(places.count());
    boost::successive_shortest_path_nonnegative_weights(
        network, places.source(), places.sink(), boost::get(&Arc::capacity, network),
        boost::get(&Arc::residual, network), boost::get(&Arc::cost, network),
        boost::get(&Arc::reverse, network), index,
        boost::make_iterator_property_map(before.begin(), index),
        boost::make_iterator_property_map(distance.begin(), index),
        boost::make_iterator_property_map(potential.begin(), index));
    return potential;
}

} // namespace

bool isOpen(const AssignmentProblem& problem, int row, int column, std::int64_t most) {
    const auto& cost = problem.cost[at(row) * at(problem.columns) + at(column)];
    return cost && *cost <= most;
}

bool canAssignAll(const AssignmentProblem& problem, std::int64_t most) {
    const Places places(problem);
    Plain graph(places.rows + places.columns);
    for (int i = 0; i < problem.rows; ++i)
        for (int j = 0; j < problem.columns; ++j)
            if (isOpen(problem, i, j, most)) boost::add_edge(at(i), places.column(at(j)), graph);
    std::vector<boost::graph_traits<Plain>::vertex_descriptor> mate(boost::num_vertices(graph));
    boost::edmonds_maximum_cardinality_matching(graph, mate.data());
    return boost::matching_size(graph, mate.data()) == places.rows;
}

LeastSum leastSum(const AssignmentProblem& problem, std::int64_t most) {
    const Places places(problem);
    Network network = networkOf(problem, places, most);
    const std::vector<Cost> potential = solve(network, places);
    LeastSum least;
    least.column.assign(places.rows, 0);
    for (std::size_t i = 0; i < places.rows; ++i)
        for (const auto arc : boost::make_iterator_range(boost::out_edges(i, network)))
            if (network[arc].capacity == 1 && network[arc].residual == 0)
                least.column[i] = static_cast<int>(boost::target(arc, network) - places.rows);
    const auto columns = potential.begin() + problem.rows;
    least.rowValue.assign(potential.begin(), columns);
    least.columnValue.assign(columns, columns + problem.columns);
    least.spare = potential[places.sink()];
    return least;
}

} // namespace borewright
