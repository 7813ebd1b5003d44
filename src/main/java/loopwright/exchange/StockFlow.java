package loopwright.exchange;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import loopwright.matching.PartKind;
import loopwright.units.Length;
import org.jgrapht.alg.flow.mincost.CapacityScalingMinimumCostFlow;
import org.jgrapht.alg.flow.mincost.MinimumCostFlowProblem.MinimumCostFlowProblemImpl;
import org.jgrapht.alg.interfaces.MinimumCostFlowAlgorithm.MinimumCostFlow;
import org.jgrapht.graph.DefaultWeightedEdge;
import org.jgrapht.graph.SimpleDirectedWeightedGraph;
import org.jspecify.annotations.Nullable;

/**
 * Which loops the stock can make whole, by one part each: most loops, then least work. Loops send
 * one unit each through a class of parts on the shelf (kind, family, length; as many as lie there)
 * to a sink, or straight to it at a price above all work together.
 */
final class StockFlow {
  private final Remedies remedies;
  private final Map<Shelved, Deque<StockPart>> shelves = new TreeMap<>();
  private final List<Offer> offers = new ArrayList<>();

  private record Shelved(PartKind kind, String family, Length length)
      implements Comparable<Shelved> {
    @Override
    public int compareTo(Shelved other) {
      return Comparator.comparing(Shelved::kind)
          .thenComparing(Shelved::family)
          .thenComparing(Shelved::length)
          .compare(this, other);
    }
  }

  private record Offer(
      LoopLengths loop, Shelved what, @Nullable FittedPart insteadOf, DefaultWeightedEdge edge) {}

  StockFlow(Remedies remedies, List<StockPart> stock) {
    this.remedies = remedies;
    stock.stream()
        .sorted(Comparator.comparing(shelved -> shelved.part().label()))
        .forEach(this::shelve);
  }

  private void shelve(StockPart stocked) {
    FittedPart part = stocked.part();
    if (part.free() && part.proved() && part.family() != null && part.length() != null) {
      shelves
          .computeIfAbsent(
              new Shelved(part.kind(), key(part.family()), part.length()),
              fresh -> new ArrayDeque<>())
          .add(stocked);
    }
  }

  private static String key(String family) {
    return family.toLowerCase(Locale.ROOT);
  }

  List<Proposal.FromStock> cover(List<LoopLengths> loops) {
    if (loops.isEmpty() || shelves.isEmpty()) {
      return List.of();
    }
    MinimumCostFlow<DefaultWeightedEdge> flow = flow(loops);
    List<Proposal.FromStock> covered = new ArrayList<>();
    for (Offer offer : offers) {
      Deque<StockPart> lying = shelves.get(offer.what());
      if (lying != null && flow.getFlow(offer.edge()) > 0.5) {
        covered.add(
            new Proposal.FromStock(
                offer.loop().tag(), lying.remove(), offer.insteadOf(), offer.loop().balance()));
      }
    }
    return covered;
  }

  private MinimumCostFlow<DefaultWeightedEdge> flow(List<LoopLengths> loops) {
    SimpleDirectedWeightedGraph<Integer, DefaultWeightedEdge> graph =
        new SimpleDirectedWeightedGraph<>(DefaultWeightedEdge.class);
    int sink = 0;
    graph.addVertex(sink);
    Map<Shelved, Integer> nodes = new TreeMap<>();
    Map<DefaultWeightedEdge, Integer> room = new java.util.HashMap<>();
    shelves.forEach(
        (what, parts) -> {
          int node = graph.vertexSet().size();
          graph.addVertex(node);
          nodes.put(what, node);
          room.put(graph.addEdge(node, sink), parts.size());
        });
    room.keySet().forEach(edge -> graph.setEdgeWeight(edge, 0));
    int firstLoop = graph.vertexSet().size();
    double none = 1.0 + (double) loops.size() * 1_000;
    for (LoopLengths loop : loops) {
      int node = graph.vertexSet().size();
      graph.addVertex(node);
      graph.setEdgeWeight(graph.addEdge(node, sink), none);
      offer(loop, node, graph, nodes);
    }
    return new CapacityScalingMinimumCostFlow<Integer, DefaultWeightedEdge>()
        .getMinimumCostFlow(
            new MinimumCostFlowProblemImpl<>(
                graph,
                node -> node == sink ? -loops.size() : node >= firstLoop ? 1 : 0,
                edge -> room.getOrDefault(edge, 1)));
  }

  /** One arc a class; of two parts that it could stand for, the one that is less work. */
  private void offer(
      LoopLengths loop,
      int node,
      SimpleDirectedWeightedGraph<Integer, DefaultWeightedEdge> graph,
      Map<Shelved, Integer> nodes) {
    for (Map.Entry<Shelved, Integer> shelf : nodes.entrySet()) {
      Shelved what = shelf.getKey();
      if (fits(loop, what)) {
        DefaultWeightedEdge edge = graph.addEdge(node, shelf.getValue());
        graph.setEdgeWeight(edge, remedies.weight(what.kind()));
        offers.add(new Offer(loop, what, replaced(loop, what), edge));
      }
    }
  }

  private boolean fits(LoopLengths loop, Shelved what) {
    return replaced(loop, what) != null
        || what.kind() == PartKind.CABLE
            && what.family().equals(key(loop.family()))
            && remedies.takesCable(loop)
            && loop.matches(loop.balance().plus(what.length()));
  }

  private static @Nullable FittedPart replaced(LoopLengths loop, Shelved what) {
    return loop.parts().stream()
        .filter(part -> part.length() != null && part.isOf(what.kind(), what.family()))
        .filter(part -> loop.matches(loop.balanceWith(part, what.length())))
        .findFirst()
        .orElse(null);
  }
}
