package loopwright.signing;

import loopwright.problem.Problem;

/** Why something was not signed, or nobody was authorised to. */
public enum SigningProblem implements Problem {
  IMPORTED(
      "Z-101", "{0} came in with a file and stays unsigned. A record that is signed is typed."),
  SOMEBODY_ELSES("Z-102", "{0} was taken by {1}, who signs it. You are {2}."),
  ALREADY_SIGNED("Z-103", "{0} is signed already, by {1}."),
  SUPERSEDED("Z-104", "{0} is superseded by {1}: sign that one."),
  NOT_AUTHORISED(
      "Z-105",
      "You have no authorisation to {0} on {1}. An engineer enters it under Authorisations, with"
          + " what it rests on."),
  STANDARD_LATE(
      "Z-106",
      "The certificate of {0} was out of date on {1} (due {2}). Without a concession for it, granted"
          + " by an engineer who is not the signer, this can't be signed."),
  STANDARD_UNFIT(
      "Z-107",
      "{0} was out of use, or had failed its check, on {1}. Without a concession for it this can't be"
          + " signed."),
  NOT_SIGNED_YET("Z-110", "{0} is not signed by the one who took it yet. Review comes after."),
  SAME_PERSON("Z-111", "You signed {0} yourself. Another person reviews it."),
  ALREADY_REVIEWED("Z-112", "{0} is reviewed already, by {1}."),
  CHANGED("Z-113", "The record''s hash is not the one signed: run verify before anything else."),
  OWN_AUTHORISATION("Z-114", "Nobody authorises themselves. Ask another engineer."),
  DATES("Z-115", "It would end on {0}, before it begins on {1}. Give a later end."),
  ENDED("Z-116", "It has ended already."),
  NO_PERSON("Z-117", "Choose a person who can sign in."),
  UNTIL_BEFORE_DUE(
      "Z-118", "The certificate is in date until {0}: a concession until {1} would cover nothing."),
  NO_CERTIFICATE("Z-119", "Choose a certificate of this standard."),
  NOT_YOURS(
      "Z-120",
      "{0} is signed by {1}. Only who signed it, or an engineer, lets another record stand in its"
          + " place.");

  private final String code;
  private final String sentence;

  SigningProblem(String code, String sentence) {
    this.code = code;
    this.sentence = sentence.replace("''", "'");
  }

  @Override
  public String code() {
    return code;
  }

  @Override
  public String sentence() {
    return sentence;
  }
}
