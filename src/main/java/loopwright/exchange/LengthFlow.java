package loopwright.exchange;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import loopwright.units.Length;
import org.jgrapht.alg.flow.mincost.CapacityScalingMinimumCostFlow;
import org.jgrapht.alg.flow.mincost.MinimumCostFlowProblem.MinimumCostFlowProblemImpl;
import org.jgrapht.alg.interfaces.MinimumCostFlowAlgorithm.MinimumCostFlow;
import org.jgrapht.graph.DefaultWeightedEdge;
import org.jgrapht.graph.SimpleDirectedWeightedGraph;

/**
 * Deals the parts of one kind and family out to their seats anew, as a minimum-cost flow over
 * length classes.
 *
 * <p>Parts of one length are alike, so that nodes are lengths, not parts:
 *
 * <ul>
 *   <li>a node for each train and length supplies as many units as the train has parts of that
 *       length;
 *   <li>a hub for each length joins the trains; the arc into it costs {@link Weights#otherTrain};
 *   <li>a node for each seat takes one unit, from any length of its train's nodes. The arc costs
 *       nothing for the length that sits there now, else the weight of a move; and <em>out</em>
 *       more when the loop isn't in balance with that length.
 * </ul>
 *
 * <em>out</em> is more than all moves together can weigh, so that the cheapest flow first puts most
 * loops in balance and then moves least. Costs are whole numbers well below 2^53, exact in the
 * library's doubles. A seat that is dealt the length it has keeps its part: parts of one length in
 * one train can be told apart afterwards so that this is always possible.
 *
 * <p>Found by capacity scaling (Edmonds and Karp 1972, in the form of Ahuja, Magnanti, Orlin:
 * Network Flows, 1993, section 10.2), as the graph library has it.
 */
final class LengthFlow {
  private final List<Seat> seats;
  private final int move;
  private final int otherTrain;
  private final SimpleDirectedWeightedGraph<Integer, DefaultWeightedEdge> graph =
      new SimpleDirectedWeightedGraph<>(DefaultWeightedEdge.class);
  private final Map<Integer, Integer> supply = new TreeMap<>();
  private final TreeSet<Length> lengths = new TreeSet<>();
  private final Map<String, Map<Length, Integer>> nodes = new TreeMap<>();
  private final double out;

  private LengthFlow(List<Seat> seats, int move, int otherTrain) {
    this.seats = seats;
    this.move = move;
    this.otherTrain = otherTrain;
    this.out = 1.0 + (double) seats.size() * (move + otherTrain);
    seats.forEach(seat -> lengths.add(seat.length()));
    lengthNodes();
    hubs();
  }

  /**
   * Which length each seat gets.
   *
   * @param move weight of moving one part
   * @return in the order of the seats
   */
  static List<Length> deal(List<Seat> seats, int move, int otherTrain) {
    return seats.isEmpty() ? List.of() : new LengthFlow(seats, move, otherTrain).dealt();
  }

  private int node(int units) {
    int node = supply.size();
    supply.put(node, units);
    graph.addVertex(node);
    return node;
  }

  private void arc(int from, int to, double cost) {
    graph.setEdgeWeight(graph.addEdge(from, to), cost);
  }

  private void lengthNodes() {
    for (Seat seat : seats) {
      Map<Length, Integer> ofTrain = nodes.computeIfAbsent(seat.train(), train -> nodesOfLengths());
      supply.merge(ofTrain.getOrDefault(seat.length(), -1), 1, Integer::sum);
    }
  }

  private Map<Length, Integer> nodesOfLengths() {
    Map<Length, Integer> fresh = new TreeMap<>();
    lengths.forEach(length -> fresh.put(length, node(0)));
    return fresh;
  }

  private void hubs() {
    if (nodes.size() < 2) {
      return;
    }
    for (Length length : lengths) {
      int hub = node(0);
      for (Map<Length, Integer> ofTrain : nodes.values()) {
        int local = ofTrain.getOrDefault(length, -1);
        arc(local, hub, otherTrain);
        arc(hub, local, 0);
      }
    }
  }

  private List<Length> dealt() {
    List<Map<Length, DefaultWeightedEdge>> choices = new ArrayList<>();
    for (Seat seat : seats) {
      choices.add(choices(seat, node(-1)));
    }
    MinimumCostFlow<DefaultWeightedEdge> flow =
        new CapacityScalingMinimumCostFlow<Integer, DefaultWeightedEdge>()
            .getMinimumCostFlow(
                new MinimumCostFlowProblemImpl<>(
                    graph, node -> supply.getOrDefault(node, 0), edge -> seats.size()));
    return choices.stream().map(choice -> chosen(choice, flow)).toList();
  }

  private Map<Length, DefaultWeightedEdge> choices(Seat seat, int node) {
    Map<Length, DefaultWeightedEdge> choices = new TreeMap<>();
    nodes
        .getOrDefault(seat.train(), Map.of())
        .forEach(
            (length, from) -> {
              DefaultWeightedEdge edge = graph.addEdge(from, node);
              double moved = length.equals(seat.length()) ? 0 : move;
              graph.setEdgeWeight(edge, moved + (seat.inBalanceWith(length) ? 0 : out));
              choices.put(length, edge);
            });
    return choices;
  }

  private static Length chosen(
      Map<Length, DefaultWeightedEdge> choices, MinimumCostFlow<DefaultWeightedEdge> flow) {
    return choices.entrySet().stream()
        .filter(choice -> flow.getFlow(choice.getValue()) > 0.5)
        .map(Map.Entry::getKey)
        .findFirst()
        .orElseThrow(() -> new IllegalStateException("a seat got no length"));
  }
}
