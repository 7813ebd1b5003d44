package loopwright.exchange;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jgrapht.alg.flow.mincost.CapacityScalingMinimumCostFlow;
import org.jgrapht.alg.flow.mincost.MinimumCostFlowProblem.MinimumCostFlowProblemImpl;
import org.jgrapht.alg.interfaces.MinimumCostFlowAlgorithm.MinimumCostFlow;
import org.jgrapht.graph.DefaultWeightedEdge;
import org.jgrapht.graph.SimpleDirectedWeightedGraph;
import org.jspecify.annotations.Nullable;

/**
 * The best way to deal single parts out to wishes that go before one another in a given order: each
 * wish gets one part at most, each part goes to one wish at most.
 *
 * <p>Of all dealings those are best that fulfil most wishes; of these, the one that fulfils the
 * first wishes; of these, the one whose chosen parts cost least. The first two never stand against
 * each other: the sets of wishes that can be fulfilled together are the independent sets of a
 * transversal matroid (Edmonds and Fulkerson 1965), in which every set that can't be enlarged is as
 * large as any other, and taking the wishes in order wherever that is possible ends in one of the
 * largest (Rado 1957). So a wish left out pays more the earlier it stands, and a minimum-cost flow
 * finds the dealing. Costs are whole numbers below 2^53, exact in the library's doubles.
 */
public final class Allocation {
  private static final long MOST_EXACT = 1L << 53;

  private final List<Wish> wishes;
  private final Map<Long, Integer> takenBy = new TreeMap<>();
  private final List<Choice> chosen = new ArrayList<>();

  /** A part that would do, and what taking it costs; never below zero. */
  public record Choice(long part, int cost) {
    public Choice {
      if (cost < 0) {
        throw new IllegalArgumentException("Taking a part costs something or nothing.");
      }
    }
  }

  /** The parts that would do for one wish, each named once; may be none. */
  public record Wish(List<Choice> choices) {
    public Wish {
      choices = List.copyOf(choices);
    }

    @Nullable Choice of(long part) {
      return choices.stream().filter(choice -> choice.part() == part).findFirst().orElse(null);
    }
  }

  /**
   * Why a wish gets nothing.
   *
   * @param parts that could reach it by moving parts between wishes; all of them are dealt out
   * @param rivals by place, in order: the wishes that hold these parts. None of them can do with
   *     another part, so that fulfilling this wish would leave one of them without, at best the
   *     last
   */
  public record Without(List<Long> parts, List<Integer> rivals) {
    public Without {
      parts = List.copyOf(parts);
      rivals = List.copyOf(rivals);
    }
  }

  private Allocation(List<Wish> wishes) {
    this.wishes = List.copyOf(wishes);
  }

  /**
   * Deals.
   *
   * @param inOrder the first goes before all others
   */
  public static Allocation of(List<Wish> inOrder) {
    Allocation allocation = new Allocation(inOrder);
    allocation.deal();
    return allocation;
  }

  /** What the wish at that place gets. */
  public OptionalLong partOf(int wish) {
    return takenBy.entrySet().stream()
        .filter(taken -> taken.getValue() == wish)
        .mapToLong(Map.Entry::getKey)
        .findFirst();
  }

  /** How many wishes are fulfilled. */
  public int fulfilled() {
    return takenBy.size();
  }

  /** What all chosen parts cost together. */
  public int cost() {
    return chosen.stream().mapToInt(Choice::cost).sum();
  }

  private long unit() {
    long most =
        1
            + wishes.stream()
                .flatMap(wish -> wish.choices().stream())
                .mapToLong(Choice::cost)
                .max()
                .orElse(0);
    long unit = 1 + most * wishes.size();
    long all = unit * (wishes.size() + 1L) * wishes.size();
    if (all >= MOST_EXACT) {
      throw new IllegalArgumentException("Too many wishes to be weighed exactly at once.");
    }
    return unit;
  }

  private void deal() {
    if (wishes.stream().allMatch(wish -> wish.choices().isEmpty())) {
      return;
    }
    SimpleDirectedWeightedGraph<Integer, DefaultWeightedEdge> graph =
        new SimpleDirectedWeightedGraph<>(DefaultWeightedEdge.class);
    int sink = wishes.size();
    for (int node = 0; node <= sink; node++) {
      graph.addVertex(node);
    }
    Map<Long, Integer> parts = parts(graph, sink);
    long unit = unit();
    List<Map<Choice, DefaultWeightedEdge>> arcs = new ArrayList<>();
    for (int wish = 0; wish < wishes.size(); wish++) {
      double without = (double) unit * (wishes.size() - wish);
      graph.setEdgeWeight(graph.addEdge(wish, sink), without);
      arcs.add(arcs(graph, wish, parts));
    }
    MinimumCostFlow<DefaultWeightedEdge> flow =
        new CapacityScalingMinimumCostFlow<Integer, DefaultWeightedEdge>()
            .getMinimumCostFlow(
                new MinimumCostFlowProblemImpl<>(
                    graph, node -> node < sink ? 1 : node == sink ? -sink : 0, edge -> 1));
    for (int wish = 0; wish < wishes.size(); wish++) {
      keep(wish, arcs.get(wish), flow);
    }
  }

  private Map<Long, Integer> parts(
      SimpleDirectedWeightedGraph<Integer, DefaultWeightedEdge> graph, int sink) {
    Map<Long, Integer> nodes = new TreeMap<>();
    for (Wish wish : wishes) {
      for (Choice choice : wish.choices()) {
        if (!nodes.containsKey(choice.part())) {
          int node = sink + 1 + nodes.size();
          nodes.put(choice.part(), node);
          graph.addVertex(node);
          graph.setEdgeWeight(graph.addEdge(node, sink), 0);
        }
      }
    }
    return nodes;
  }

  private Map<Choice, DefaultWeightedEdge> arcs(
      SimpleDirectedWeightedGraph<Integer, DefaultWeightedEdge> graph,
      int wish,
      Map<Long, Integer> parts) {
    Map<Choice, DefaultWeightedEdge> arcs = new HashMap<>();
    for (Choice choice : wishes.get(wish).choices()) {
      DefaultWeightedEdge arc = graph.addEdge(wish, parts.get(choice.part()));
      if (arc == null) {
        throw new IllegalArgumentException("Part " + choice.part() + " is named twice.");
      }
      graph.setEdgeWeight(arc, choice.cost());
      arcs.put(choice, arc);
    }
    return arcs;
  }

  private void keep(
      int wish, Map<Choice, DefaultWeightedEdge> arcs, MinimumCostFlow<DefaultWeightedEdge> flow) {
    arcs.forEach(
        (choice, arc) -> {
          if (flow.getFlow(arc) > 0.5) {
            takenBy.put(choice.part(), wish);
            chosen.add(choice);
          }
        });
  }

  /**
   * Why that wish gets nothing: follows the parts that would do to whoever holds them, from there
   * to the parts that those could do with instead, and so on (alternating paths, Berge 1957).
   *
   * @throws IllegalArgumentException if it is fulfilled
   */
  public Without without(int wish) {
    if (partOf(wish).isPresent()) {
      throw new IllegalArgumentException("That wish is fulfilled.");
    }
    TreeSet<Long> parts = new TreeSet<>();
    TreeSet<Integer> rivals = new TreeSet<>();
    Deque<Integer> asking = new ArrayDeque<>(List.of(wish));
    while (!asking.isEmpty()) {
      for (Choice choice : wishes.get(asking.remove()).choices()) {
        Integer holder = takenBy.get(choice.part());
        if (parts.add(choice.part()) && holder != null && rivals.add(holder)) {
          asking.add(holder);
        }
      }
    }
    return new Without(List.copyOf(parts), List.copyOf(rivals));
  }
}
